using PartsSignal.Pipeline.Bench;

namespace PartsSignal.EndToEnd.Tests.Bench;

public sealed class ResultFiguresTests : IDisposable
{
    private readonly ScratchFolder _results = new();

    public void Dispose() => _results.Dispose();

    private const string BookedHead = "van,job_id,opened_on,appliance_type,complaint_kind,need,part_number,quantity,chance,planned,aboard,take_along\n";

    [Fact]
    public void All_WaitingCalls_AreOldestFirstWithTheLikeliestPartFirst()
    {
        _results.Write("van_booked.csv", BookedHead
            + "1,J2,2026-10-30,washer,no_fill,inlet_valve,6895,1,0.12,1,1,0\n1,J2,2026-10-30,washer,no_fill,control_board,0047575,1,0.35,0,0,1\n1,J1,2026-10-29,unknown,other,door_lock,3312,1,0.2,1,1,0\n2,J3,2026-10-28,dryer,none,drive_belt,90-3,1,0.4,1,,0\n");
        IReadOnlyList<WaitingSheet> sheets = WaitingSheet.All(_results.Path);
        Assert.Equal(["1", "2"], sheets.Select(s => s.Van));
        Assert.Equal(["J1", "J2"], sheets[0].Calls.Select(j => j.Job));
        Assert.Equal(["complaint not recognized", "washer, no fill", "dryer, no complaint given"], sheets.SelectMany(s => s.Calls).Select(j => j.What));
        Assert.Equal([("control board", "0047575", 1), ("inlet valve", "6895", 0)], sheets[0].Calls[1].Parts.Select(p => (p.Need, p.PartNumber, p.TakeAlong)));
    }

    [Theory]
    [InlineData("1,0,0,1", "☐ Take 1")] // the load lacks it
    [InlineData("2,1,1,1", "☐ Take 1")] // the load has one of two
    [InlineData("1,1,1,0", "On the van")]
    [InlineData("1,0,1,0", "On the van")] // it goes off with the plan, but is there today
    [InlineData("1,1,0,0", "In the planned load")] // counted, and not there yet
    [InlineData("1,1,,0", "In the planned load")] // not counted
    [InlineData("2,1,1,0", null)] // too few, and a second one does not pay
    [InlineData("1,0,0,0", null)]
    [InlineData("1,0,,0", null)]
    public void All_PartOfAWaitingCall_SaysWhereItIsOrIsLeftOut(string figures, string? from)
    {
        string[] f = figures.Split(',');
        _results.Write("van_booked.csv", BookedHead + $"1,J1,2026-10-29,washer,no_fill,inlet_valve,6895,{f[0]},0.12,{f[1]},{f[2]},{f[3]}\n");
        IReadOnlyList<WaitingSheet> sheets = WaitingSheet.All(_results.Path);
        Assert.Equal(from is null ? [] : [from], sheets.SelectMany(s => s.Calls).SelectMany(c => c.Parts).Select(p => p.From));
        Assert.Equal(from is null ? 0 : 1, sheets.Count);
    }

    [Fact]
    public void All_MonthFigures_HaveSharesAndNeedsAndMissingOnesStayUnknown()
    {
        _results.Write("month_figures.csv", "month,calls,still_open,first_visit_share,first_visit_lower,first_visit_upper,no_part_share,no_part_lower,no_part_upper\n2026-09-01,300,4,0.75,0.7,0.8,,,\n2026-10-01,5,1,,,,0.2,0.1,0.4\n");
        _results.Write("month_needs.csv", "month,need,calls\n2026-09-01,none,71\n2026-09-01,drain_pump,25\n2026-09-01,other_part,9\n");
        IReadOnlyList<MonthFigures> months = MonthFigures.All(_results.Path);
        Assert.Equal(["2026-09", "2026-10"], months.Select(m => m.Month));
        Assert.Equal((new MonthShare(0.75, 0.7, 0.8), new MonthShare(null, null, null)), (months[0].FirstVisit, months[0].NoPart));
        Assert.Equal([("drain pump", 25L), ("part not named", 9L)], months[0].Needs.OrderBy(n => n.Key, StringComparer.Ordinal).Select(n => (n.Key, n.Value)));
        Assert.Empty(months[1].Needs);
    }

    [Fact]
    public void All_NoUpdateYet_IsEmpty()
    {
        Assert.Empty(WaitingSheet.All(_results.Path));
        Assert.Empty(MonthFigures.All(_results.Path));
    }
}
