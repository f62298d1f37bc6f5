using PartsSignal.SampleShop.Simulation;
using PartsSignal.SampleShop.World;

namespace PartsSignal.SampleShop.Tests.Simulation;

public sealed class AreaTests(LivedArea area)
{
    private readonly LivedArea.Heard _log = area.Log;

    [Fact]
    public void Run_EveryJob_GoesForwardInTime() =>
        Assert.All(_log.Jobs, j =>
        {
            Assert.InRange(j.OpenedDay, ShopCalendar.LogStart, ShopCalendar.AsOf);
            Assert.True(j.VisitDay >= j.OpenedDay);
            Assert.True(j.ClosedDay >= j.VisitDay);
            Assert.True(j.OpenedDay >= j.Unit.InstalledDay);
        });

    [Fact]
    public void Run_JobNumbers_AreUnique() =>
        Assert.Equal(_log.Jobs.Count, _log.Jobs.Select(j => j.Id).Distinct().Count());

    [Fact]
    public void Run_SameSeeds_SameJobs()
    {
        LivedArea.Heard one = LivedArea.Live(9, 9, 0.05);
        LivedArea.Heard two = LivedArea.Live(9, 9, 0.05);
        Assert.NotEmpty(one.Jobs);
        Assert.Equal(one.Jobs.Select(Shape), two.Jobs.Select(Shape));
        Assert.Equal(one.Orders.Count, two.Orders.Count);
    }

    [Fact]
    public void Run_OtherEvents_SameMachinesOtherJobs()
    {
        LivedArea.Heard one = LivedArea.Live(9, 9, 0.05);
        LivedArea.Heard two = LivedArea.Live(9, 10, 0.05);
        Assert.NotEqual(one.Jobs.Select(Shape), two.Jobs.Select(Shape));
        Assert.InRange(two.Jobs.Count / (double)one.Jobs.Count, 0.8, 1.25);
    }

    [Fact]
    public void Run_WrongDiagnosis_ComesBackMostOfTheTime()
    {
        int wrong = _log.Jobs.Count(j => j.State is JobState.FixedWithPart or JobState.FixedWithoutPart && !j.DiagnosisRight && j.ClosedDay < ShopCalendar.AsOf - 30);
        int back = _log.Jobs.Count(j => j.IsCallback);
        Assert.InRange(back / (double)wrong, 0.75, 1.0);
        Assert.InRange(wrong / (double)_log.Jobs.Count, 0.03, 0.09);
    }

    [Fact]
    public void Run_SecondSuppliersDrainPumps_FailEarlyMoreOften()
    {
        double first = EarlyShare(false);
        double second = EarlyShare(true);
        Assert.True(second > 4 * first, $"first {first}, second {second}");
        Assert.InRange(second, 0.06, 0.25);
    }

    [Fact]
    public void Run_ContractJobs_AreOnRegisteredUnits()
    {
        var register = _log.Register.ToHashSet();
        Job[] contract = [.. _log.Jobs.Where(j => j.Unit.Owner.IsContract)];
        Assert.InRange(contract.Length / (double)_log.Jobs.Count, 0.05, 0.18);
        Assert.All(contract, j => Assert.Contains(j.Unit, register));
    }

    [Fact]
    public void Run_Refrigerators_FailMoreInSummer()
    {
        int summer = Calls("refrigerator", 6, 7, 8);
        int winter = Calls("refrigerator", 12, 1, 2);
        Assert.True(summer > 1.5 * winter, $"summer {summer}, winter {winter}");
    }

    [Fact]
    public void Run_WinterOrders_TakeLongerFromTheSecondSupplier()
    {
        double winter = _log.Orders.Where(o => o.Second && ShopCalendar.Date(o.OrderedDay).Month is 11 or 12 or 1).Average(o => o.ArrivesDay - o.OrderedDay);
        double summer = _log.Orders.Where(o => o.Second && ShopCalendar.Date(o.OrderedDay).Month is 6 or 7 or 8).Average(o => o.ArrivesDay - o.OrderedDay);
        Assert.True(winter > summer + 1, $"winter {winter}, summer {summer}");
    }

    [Fact]
    public void Run_PartsNotFromTheVan_WereOrderedForTheJob()
    {
        ILookup<string?, OrderLine> ordered = _log.Orders.ToLookup(o => o.JobId);
        Assert.All(
            _log.Jobs.Where(j => j.State == JobState.FixedWithPart && j.Parts.Any(p => !p.FromVan)),
            j => Assert.NotEmpty(ordered[j.Id]));
    }

    [Fact]
    public void Run_LastDays_LeaveJobsOpen() =>
        Assert.InRange(_log.Jobs.Count(j => j.StateOn(ShopCalendar.AsOf) is JobState.Waiting or JobState.PartOrdered), 8, 150);

    private double EarlyShare(bool second)
    {
        ILookup<Unit, Job> byUnit = _log.Jobs.ToLookup(j => j.Unit);
        Job[] pumps = [.. _log.Jobs.Where(j =>
            j.State == JobState.FixedWithPart && j.DiagnosisRight && j.ClosedDay < ShopCalendar.AsOf - 365
            && j.Parts[0].Part.Component == Faults.PumpComponent && j.Parts[0].SecondSupplier == second)];
        int early = pumps.Count(j => byUnit[j.Unit].Any(l =>
            !l.IsCallback && l.TrueCause == j.TrueCause && l.OpenedDay > j.ClosedDay && l.OpenedDay <= j.ClosedDay + 365));
        return early / (double)pumps.Length;
    }

    private int Calls(string type, params int[] months) =>
        _log.Jobs.Count(j => j.Unit.Family.Type == type && months.Contains(ShopCalendar.Date(j.OpenedDay).Month));

    private static (string, int, int, string, int) Shape(Job job) => (job.Id, job.OpenedDay, job.TrueCause, job.Note.Text, job.ClosedDay);
}
