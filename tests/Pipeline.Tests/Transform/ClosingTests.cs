using PartsSignal.Pipeline.Transform;

namespace PartsSignal.Pipeline.Tests.Transform;

/// <summary>Closed or open: from the closing day, else the status, the outcome, or what the row itself says.</summary>
public sealed class ClosingTests
{
    private static readonly DateOnly Day = new(2024, 3, 4);

    // Each in a log of its own, because what a log tells of its jobs decides as well.
    [Fact]
    public void Jobs_WithoutClosingDay_AreFinishedAsStatusAndOutcomeSay()
    {
        (string? Status, string Outcome, string Expected)[] cases =
        [
            ("closed", "unknown", "status|2024-03-04|unknown"),
            ("canceled", "unknown", "status|2024-03-04|declined"),
            ("open", "fixed_with_part", "open|-|fixed_with_part"),
            ("waiting_for_part", "unknown", "open|-|part_ordered"),
            (null, "part_ordered", "open|-|part_ordered"),
            (null, "no_fault_found", "outcome|2024-03-04|no_fault_found"),
            (null, "unknown", "unknown|-|unknown"),
        ];
        using var shop = new TransformShop();
        shop.Add([.. cases.Select((c, i) => Job($"J{i}") with { SourceOrder = i, Status = c.Status, Outcome = c.Outcome })]).Combine();
        Assert.Equal(cases.Select(c => c.Expected), shop.Rows("from jobs select closing_basis, closed_on, outcome order by job_id"));
    }

    [Fact]
    public void Jobs_ClosingDayAgainstStatus_TheDayCounts()
    {
        using var shop = new TransformShop();
        shop.Add(Job("J1") with { ClosedOn = Day.AddDays(3), Status = "open" }).Combine();
        Assert.Equal(["closing day|2024-03-07"], shop.Rows("from jobs select closing_basis, closed_on"));
    }

    // Twelve old rows: ten with a closing day, so that a blank one means open.
    [Fact]
    public void Jobs_LogThatTellsClosingDays_BlankIsOpenEvenWithAPart()
    {
        using var shop = new TransformShop();
        shop.Add([.. Old(12, 10)]).Add(new StagedJobPart("J11", "P1") { Component = "inlet_valve" }).Combine();
        Assert.Equal(["closing day|10", "open|2"], shop.Rows("from jobs select closing_basis, count(*) group by 1 order by 1"));
        Assert.Null(AssumedClosing.Read(shop.Database).Sentence);
    }

    // No closing day in the log, and a word of status on most rows only: the others are finished where an outcome says so.
    [Fact]
    public void Jobs_LogOfStatusWordsAndOutcomes_AnOutcomeFinishesAJobToo()
    {
        using var shop = new TransformShop();
        shop.Add([.. Old(12, 0).Select((j, i) => i < 8 ? j with { Status = "closed" } : i < 11 ? j with { Outcome = "no_fault_found" } : j)]).Combine();
        Assert.Equal(["open|1", "outcome|3", "status|8"], shop.Rows("from jobs select closing_basis, count(*) group by 1 order by 1"));
    }

    // A handful of closing days among a dozen rows: the column is not kept, and blank says nothing.
    [Fact]
    public void Jobs_LogWithoutClosingDays_RowThatNamesAPartIsFinished_TheRestIsNeither()
    {
        using var shop = new TransformShop();
        shop.Add([.. Old(12, 2)]).Add(new StagedJobPart("J11", "P1") { Component = "inlet_valve" }).Combine();
        Assert.Equal(
            ["closing day|2|2", "row|1|1", "unknown|9|0"],
            shop.Rows("from jobs select closing_basis, count(*), count(closed_on) group by 1 order by 1"));
        Assert.Equal(["J11|inlet_valve"], shop.Rows("from jobs select job_id, main_component where closing_basis = 'row'"));
        Assert.Equal(
            "These have no closing day and are counted as finished on the day of the call: 1 job because the row names a part and the log does not say which jobs are finished. For 9 jobs, the log does not say whether they are finished.",
            AssumedClosing.Read(shop.Database).Sentence);
    }

    // Eleven of twelve rows name what was fitted, and nothing says when a job ended: the log lists finished jobs.
    [Fact]
    public async Task Load_LogOfWorkAlone_TheRowThatNamesNoPartIsFinishedToo()
    {
        using var shop = new SmallShop();
        shop.Write("jobs.csv", "Job,Day,Part\n" + string.Concat(Enumerable.Range(1, 12).Select(i => $"{i},2026-{i:00}-03,{(i == 7 ? "" : "P1")}\n")));
        shop.Write("shop.json", """{ "sources": [ { "files": "jobs.csv", "kind": "jobs", "columns": { "job_id": "Job", "opened_on": "Day", "part": "Part" } } ] }""");
        await shop.Load();
        Assert.Equal(["row|12"], shop.Rows("from jobs select closing_basis, count(*) group by 1"));
    }

    // This month's export has hardly a closing day yet; last year's file shows that the shop writes them.
    [Fact]
    public void Jobs_NewMonthOfAShopThatTells_BlankIsOpen()
    {
        using var shop = new TransformShop();
        shop.Add([.. Old(12, 12)])
            .Add(Job("N1") with { SourceOrder = 1, OpenedOn = Day.AddDays(400) }, Job("N2") with { SourceOrder = 1, OpenedOn = Day.AddDays(401) })
            .Add(new StagedJobPart("N1", "P1") { SourceOrder = 1 }).Combine();
        Assert.Equal(["open|2"], shop.Rows("from jobs select closing_basis, count(*) where job_id like 'N%' group by 1"));
    }

    [Fact]
    public async Task Load_LogThatTellsOnlyStatus_JobsAreFinishedAndItIsSaid()
    {
        using var shop = new SmallShop();
        shop.Write("jobs.csv", "Auftrag;Eingang;Stand;Teil\nA1;03.08.2026;Erledigt;P1\nA2;04.08.2026;Wartet auf Ersatzteil;\nA3;05.08.2026;Storniert;\nA4;26.08.2026;offen;\nA5;27.08.2026;Komisch;\n");
        shop.Write("shop.json", """{ "sources": [ { "files": "jobs.csv", "kind": "jobs", "columns": { "job_id": "Auftrag", "opened_on": "Eingang", "status": "Stand", "part": "Teil" } } ] }""");
        await shop.Load();
        Assert.Equal(
            ["A1|status|2026-08-03|fixed_with_part|other_part", "A2|open|-|part_ordered|-", "A3|status|2026-08-05|declined|-", "A4|open|-|unknown|-", "A5|open|-|unknown|-"],
            shop.Rows("from jobs select job_id, closing_basis, closed_on, outcome, main_component order by 1"));
    }

    [Fact]
    public async Task Load_OutcomeColumnThatHoldsAStatus_SaysBoth()
    {
        (string Cell, string Expected)[] logs =
            [("Cerrado", "status|fixed_with_part"), ("Anulado", "status|declined"), ("W toku", "open|unknown"), ("En attente de pièces", "open|part_ordered")];
        using var shop = new SmallShop();
        foreach ((int i, (string cell, _)) in logs.Index())
        {
            shop.Write($"jobs-{i}.csv", $"Job,Day,End,Part\nJ{i},2026-08-03,{cell},P1\n");
        }

        IEnumerable<string> sources = logs.Select((_, i) => $$"""{ "files": "jobs-{{i}}.csv", "kind": "jobs", "columns": { "job_id": "Job", "opened_on": "Day", "outcome": "End", "part": "Part" } }""");
        shop.Write("shop.json", $$"""{ "sources": [ {{string.Join(", ", sources)}} ] }""");
        await shop.Load();
        Assert.Equal(logs.Select(l => l.Expected), shop.Rows("from jobs select closing_basis, outcome order by job_id"));
    }

    private static StagedJob Job(string id) => new(id) { OpenedOn = Day, ClosedOn = null, Outcome = "unknown" };

    private static IEnumerable<StagedJob> Old(int jobs, int closed) => Enumerable.Range(0, jobs)
        .Select(i => Job($"J{i}") with { OpenedOn = Day.AddDays(i * 20), ClosedOn = i < closed ? Day.AddDays((i * 20) + 1) : null });
}
