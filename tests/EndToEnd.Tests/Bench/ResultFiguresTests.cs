using PartsSignal.Pipeline.Bench;

namespace PartsSignal.EndToEnd.Tests.Bench;

public sealed class ResultFiguresTests : IDisposable
{
    private readonly ScratchFolder _results = new();

    public void Dispose() => _results.Dispose();

    [Fact]
    public void All_BookedJobs_AreOldestFirstWithTheLikeliestPartFirst()
    {
        _results.Write("van_booked.csv", "van,job_id,opened_on,appliance_type,complaint_kind,need,part_number,quantity,chance,planned,aboard,take_along\n"
            + "1,J2,2026-10-30,washer,no_fill,inlet_valve,6895,1,0.12,1,1,0\n1,J2,2026-10-30,washer,no_fill,control_board,0047575,1,0.35,0,0,1\n1,J1,2026-10-29,,,,,,,,,\n2,J3,2026-10-28,dryer,,,,,,,,\n");
        IReadOnlyList<DaySheet> sheets = DaySheet.All(_results.Path);
        Assert.Equal(["1", "2"], sheets.Select(s => s.Van));
        Assert.Equal(["J1", "J2"], sheets[0].Jobs.Select(j => j.Job));
        Assert.Empty(sheets[0].Jobs[0].Parts);
        Assert.Equal("washer, no fill", sheets[0].Jobs[1].What);
        Assert.Equal([("control board", "0047575", 1), ("inlet valve", "6895", 0)], sheets[0].Jobs[1].Parts.Select(p => (p.Need, p.PartNumber, p.TakeAlong)));
    }

    [Fact]
    public void All_MonthFigures_HaveSharesAndNeedsAndMissingOnesStayUnknown()
    {
        _results.Write("month_figures.csv", "month,calls,still_open,first_visit_share,first_visit_lower,first_visit_upper,no_part_share,no_part_lower,no_part_upper\n2026-09-01,300,4,0.75,0.7,0.8,,,\n2026-10-01,5,1,,,,0.2,0.1,0.4\n");
        _results.Write("month_needs.csv", "month,need,calls\n2026-09-01,none,71\n2026-09-01,drain_pump,25\n");
        IReadOnlyList<MonthFigures> months = MonthFigures.All(_results.Path);
        Assert.Equal(["2026-09", "2026-10"], months.Select(m => m.Month));
        Assert.Equal((new MonthShare(0.75, 0.7, 0.8), new MonthShare(null, null, null)), (months[0].FirstVisit, months[0].NoPart));
        Assert.Equal(("drain pump", 25L), (months[0].Needs.Single().Key, months[0].Needs.Single().Value));
        Assert.Empty(months[1].Needs);
    }

    [Fact]
    public void All_NoUpdateYet_IsEmpty()
    {
        Assert.Empty(DaySheet.All(_results.Path));
        Assert.Empty(MonthFigures.All(_results.Path));
    }
}
