using PartsSignal.Analysis.Statistics.Shrinkage;
using PartsSignal.Analysis.Trends;

namespace PartsSignal.Analysis.Tests.Trends;

public sealed class TrendScanTests
{
    private static readonly TrendOptions Options = new();
    private static readonly Rise Batch = new("F3", "inlet_valve", 40, [2, 5, 8, 10], TrendWorld.First + 10);

    [Fact]
    public void Scan_BadBatch_IsNamedWithItsFamilyItsBuildMonthAndItsJobs()
    {
        var world = new TrendWorld(7) { Rise = Batch };
        TrendTables found = TrendTables.Create(world.Book(), Options);
        TrendAlarm alarm = found.Alarms.First(a => a is { Component: "inlet_valve", ModelFamily: "F3", Kind: TrendAlarm.OfMonth });
        Assert.InRange(alarm.Month, TrendMonth.Day(TrendWorld.First + 40), TrendMonth.Day(TrendWorld.First + 43));
        Assert.Null(alarm.PartOf);
        TrendAlarm later = found.Alarms.First(a => a.Key() == alarm.Key() && a.Month == TrendMonth.Day(TrendWorld.First + 46));
        Assert.InRange(later.Since, TrendMonth.Day(TrendWorld.First + 40), TrendMonth.Day(TrendWorld.First + 43));
        Assert.True(later.SinceCertainty > 3);
        Assert.Equal((Batch.MadeMonth, Batch.MadeMonth), (Month(later.BuiltFrom), Month(later.BuiltTo)));
        Assert.Equal(later.Observed, later.Jobs);
        Assert.Equal(later.Jobs, found.AlarmJobs.Count(j => j.Month == later.Month && j.ModelFamily == "F3" && j is { Component: "inlet_valve", Kind: TrendAlarm.OfMonth }));
        Assert.All(found.Alarms, a => Assert.False(a.LeastRatio < 1 || a.LeastRatio > a.Ratio));
    }

    [Fact]
    public void Scan_OneFamilyDragsTheComponentUp_TheComponentIsPartOfIt()
    {
        TrendTables found = TrendTables.Create(new TrendWorld(3) { Rise = Batch with { PerMonth = [20] } }.Book(), Options);
        TrendAlarm[] parents = [.. found.Alarms.Where(a => a is { Component: "inlet_valve", ModelFamily: "all", Kind: TrendAlarm.OfMonth })];
        Assert.NotEmpty(parents);
        Assert.InRange(parents.Count(p => p.PartOf == "washer / inlet_valve / F3"), 0.9 * parents.Length, parents.Length);
        Assert.All(found.Alarms.Where(x => x is { Component: "inlet_valve", ModelFamily: "F3", Kind: TrendAlarm.OfMonth }), x => Assert.Null(x.PartOf));
    }

    [Fact]
    public void Scan_OneCustomerMakesTheRise_DoesNotSurviveWithoutIt()
    {
        TrendCall[] calls = [.. new TrendWorld(5).Calls()];
        TrendCall[] extra = [.. Enumerable.Range(0, 12).Select(i => new TrendCall(
            $"X{i}", TrendWorld.First + 52, TrendWorld.First + 52, "washer", "F2", "timer", "T1", "one-customer", "F2-0", null))];
        TrendTables found = TrendTables.Create(new CallTable([.. calls, .. extra], TrendWorld.First, TrendWorld.First + 59), Options);
        TrendAlarm alarm = found.Alarms.Single(a => a is { Component: "timer", ModelFamily: "F2" } && a.Month == TrendMonth.Day(TrendWorld.First + 52));
        Assert.InRange(alarm.Observed, 12, 14);
        Assert.Equal((12, false), (alarm.LargestCustomerCases, alarm.SurvivesCustomer));
    }

    [Fact]
    public void Scan_SpreadRise_SurvivesEveryRemoval()
    {
        TrendTables found = TrendTables.Create(new TrendWorld(11) { Rise = Batch with { PerMonth = [18] } }.Book(), Options);
        TrendAlarm alarm = found.Alarms.First(a => a is { Component: "inlet_valve", ModelFamily: "F3" } && a.Month > TrendMonth.Day(TrendWorld.First + 42));
        Assert.True(alarm is { SurvivesCustomer: true, SurvivesTechnician: true, SurvivesModel: true });
    }

    [Fact]
    public void Scan_SlowDrift_IsFoundAsDriftOrMonth()
    {
        double[] slow = [.. Enumerable.Range(0, 20).Select(i => 0.25 * (i + 1))];
        TrendTables found = TrendTables.Create(new TrendWorld(2) { Rise = new Rise("F2", "motor", 40, slow) }.Book(), Options);
        Assert.Contains(found.Alarms, a => a is { Component: "motor", ModelFamily: "F2" });
    }

    [Fact]
    public void Scan_CallsInAnotherOrder_GivesTheSameTables()
    {
        IReadOnlyList<TrendCall> calls = new TrendWorld(7) { Rise = Batch }.Calls();
        var random = new Random(1);
        TrendCall[] shuffled = [.. calls];
        random.Shuffle(shuffled);
        TrendTables a = TrendTables.Create(new CallTable(calls, TrendWorld.First, TrendWorld.First + 59), Options);
        TrendTables b = TrendTables.Create(new CallTable(shuffled, TrendWorld.First, TrendWorld.First + 59), Options);
        Assert.Equal(a.Alarms, b.Alarms);
        Assert.Equal(a.Tests, b.Tests);
        Assert.Equal(a.AlarmJobs.OrderBy(j => j.ToString(), StringComparer.Ordinal), b.AlarmJobs.OrderBy(j => j.ToString(), StringComparer.Ordinal));
    }

    [Fact]
    public void Scan_FutureDeleted_ChangesNoPastMonth()
    {
        IReadOnlyList<TrendCall> calls = new TrendWorld(7) { Rise = Batch }.Calls();
        int then = TrendWorld.First + 47;
        TrendTables whole = TrendTables.Create(new CallTable(calls, TrendWorld.First, TrendWorld.First + 59), Options);
        TrendCall[] cut = [.. calls.Where(c => c.Month <= then).Select(c => c.KnownMonth <= then ? c : c with { KnownMonth = null, Component = null })];
        TrendTables past = TrendTables.Create(new CallTable(cut, TrendWorld.First, then), Options);
        Assert.NotEmpty(past.Alarms);
        Assert.Equal(past.Alarms, whole.Alarms.Where(a => a.Month <= TrendMonth.Day(then)));
        Assert.Equal(past.Scans, whole.Scans.Where(s => s.Month <= TrendMonth.Day(then)));
        Assert.Equal(past.AlarmJobs, whole.AlarmJobs.Where(j => j.Month <= TrendMonth.Day(then)));
    }

    [Fact]
    public void Scan_DoubledCalls_DoublesWhatWasSeenAndExpected()
    {
        IReadOnlyList<TrendCall> calls = new TrendWorld(7) { Season = 0 }.Calls();
        TrendTables once = TrendTables.Create(new CallTable(calls, TrendWorld.First, TrendWorld.First + 59), Options);
        TrendTables twice = TrendTables.Create(new CallTable([.. calls, .. calls.Select(c => c with { JobId = c.JobId + "b" })], TrendWorld.First, TrendWorld.First + 59), Options);
        int compared = 0;
        foreach (TrendTestRow row in once.Tests)
        {
            TrendTestRow other = twice.Tests.Single(t => (t.ApplianceType, t.Component, t.ModelFamily) == (row.ApplianceType, row.Component, row.ModelFamily));
            Assert.Equal(2 * row.Observed, other.Observed);

            // Twice the calls can make a rise certain, and a certain rise leaves the baseline.
            if (other.BaselineMonths == row.BaselineMonths)
            {
                Assert.InRange(other.Expected / row.Expected, 1.8, 2.0001);
                compared++;
            }
        }

        Assert.True(compared > once.Tests.Count / 2);
    }

    // A rejected series that is too small a rise to be an alarm still counts among the rejections.
    [Fact]
    public void AskedFor_RejectionsBesideTheAlarms_PartsTheRejectedFromTheOthers()
    {
        TrendOptions strict = Options with { Gate = new EffectGate(Ratio: 50) };
        CallTable table = new TrendWorld(3) { Rise = Batch with { PerMonth = [20] } }.Book();
        MonthScan[] scans = [.. Enumerable.Range(TrendWorld.First + 40, 12).Select(m => MonthScan.Create(table, MonthView.At(table, m, new HashSet<(SeriesKey, int)>(), strict), strict))];
        Assert.Contains(scans, s => s.Rejected.Count > s.Risen.Count);
        Assert.All(scans.SelectMany(s => s.Tests.Select(t => (s, t))), x =>
        {
            double asked = x.s.AskedFor(x.t.Test.Key, strict);
            Assert.Equal(x.t.Q <= strict.Gate.Q, x.t.Test.P <= asked);
            Assert.Equal(strict.Gate.Q * (x.s.Rejected.Count + (x.t.Q <= strict.Gate.Q ? 0 : 1)) / x.s.Tests.Count, asked, 12);
        });
    }

    [Fact]
    public void Scan_BadBatch_AlarmsReachTheirOwnLimitAndSlowRisesTellNoSize()
    {
        double[] slow = [.. Enumerable.Range(0, 20).Select(i => 0.25 * (i + 1))];
        TrendTables found = TrendTables.Create(new TrendWorld(2) { Rise = new Rise("F2", "motor", 40, slow) }.Book(), Options);
        Assert.All(found.Alarms.Where(a => a.Kind == TrendAlarm.OfMonth), a => Assert.True(a.Observed >= a.AlarmCount));
        TrendAlarm[] drifts = [.. found.Alarms.Where(a => a.Kind == TrendAlarm.OfDrift)];
        Assert.NotEmpty(drifts);
        Assert.All(drifts, d => Assert.Null(d.LeastRatio));
    }

    [Fact]
    public void Scan_ShortLog_TestsNothing() =>
        Assert.Empty(TrendTables.Create(new TrendWorld(1) { Months = 12 }.Book(), Options).Scans);

    [Fact]
    public void Delays_NewestMonth_IsAboutThreeQuartersKnown()
    {
        TrendTables found = TrendTables.Create(new TrendWorld(4).Book(), Options);
        Assert.InRange(found.Delays.Single(d => d is { Component: "all", MonthsAfter: 0 }).ShareKnown, 0.71, 0.79);
    }

    private static int? Month(DateOnly? day) => day is { } d ? d.Year * 12 + d.Month - 1 : null;
}
