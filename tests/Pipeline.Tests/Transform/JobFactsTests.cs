using PartsSignal.Analysis.Sql;
using PartsSignal.Pipeline.Transform;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Tests.Transform;

public sealed class JobFactsTests(EndedJobs ended) : IClassFixture<EndedJobs>
{
    [Theory]
    [InlineData("fixed_with_part", "fill_hose,inlet_valve", "fixed_with_part|inlet_valve")]
    [InlineData("fixed_with_part", "fill_hose", "fixed_with_part|fill_hose")]
    [InlineData("fixed_with_part", "", "fixed_with_part|other_part")]
    [InlineData("fixed_with_part", "?", "fixed_with_part|other_part")]
    [InlineData("fixed_without_part", "", "fixed_without_part|none")]
    [InlineData("no_fault_found", "", "no_fault_found|none")]
    [InlineData("part_ordered", "", "part_ordered|-")]
    [InlineData("declined", "", "declined|-")]
    [InlineData("fixed", "inlet_valve", "fixed_with_part|inlet_valve")]
    [InlineData("fixed", "", "fixed_without_part|none")]
    public void Combine_Outcome_GivesMainComponent(string outcome, string components, string expected) =>
        Assert.Equal([expected], ended.Shop.Rows($"from jobs select outcome, main_component where job_id = '{outcome}:{components}'"));

    [Theory]
    [InlineData("fixed_with_part", 1, true, "yes")]
    [InlineData("fixed_without_part", 2, true, "no")]
    [InlineData("part_ordered", 1, false, "no")]
    [InlineData("fixed_with_part", null, true, "-")]
    [InlineData("declined", 1, true, "-")]
    public void Combine_Visits_TellFirstVisitDone(string outcome, int? visits, bool closed, string expected) =>
        Assert.Equal([expected], ended.Shop.Rows($"from jobs select first_visit_done where job_id = '{EndedJobs.Name(outcome, visits, closed)}'"));

    [Theory]
    [InlineData(1, 3)]
    [InlineData(3, 2)]
    [InlineData(200_000, 1)]
    public void Combine_SpansOfDays_ChangeNoJobAndCutNoDay(long spanJobs, int spans)
    {
        using var shop = new TransformShop();
        shop.Add([.. Enumerable.Range(0, 5).Select(i => new StagedJob($"J{i}") { OpenedOn = new DateOnly(2024, 3, 1 + (i / 2)) })])
            .Combine(new TransformOptions { SpanJobs = spanJobs });
        Assert.Equal(
            ["J0|2024-03-01", "J1|2024-03-01", "J2|2024-03-02", "J3|2024-03-02", "J4|2024-03-03"],
            shop.Rows("from jobs select job_id, opened_on"));
        Assert.Equal(spans, shop.Database.Read("queries/session/job_spans.sql", r => r.GetFieldValue<DateOnly>(0), ("jobs", spanJobs)).Count);
    }

    [Fact]
    public void Combine_AccessoryOfAnotherType_StaysAnAccessory()
    {
        using var shop = new TransformShop();
        ResultTable.Write(shop.Database, "component_roles", [new ComponentRole("idler_pulley", "accessory", "dryer"), new ComponentRole("inlet_valve", "main", "washer")]);
        shop.Add([.. Enumerable.Range(0, 3).Select(i => new StagedJob($"J{i}"))])
            .Add([.. Enumerable.Range(0, 3).SelectMany(i => new[] { "idler_pulley", "inlet_valve" }.Select(c =>
                new StagedJobPart($"J{i}", c) { SourceOrder = 2, WithJobRow = false, Component = c }))])
            .Combine();
        Assert.Equal(["inlet_valve", "washer_idler_pulley"], shop.Rows("from job_parts select distinct component order by 1"));
        Assert.Equal(["inlet_valve|3"], shop.Rows("from jobs select main_component, count(*) group by 1"));
    }

    [Fact]
    public void Combine_OrderOfAnOwnComponent_IsNamedAsOnJobs()
    {
        using var shop = new TransformShop();
        shop.Add([.. Enumerable.Range(0, 3).Select(i => new StagedJob($"J{i}"))])
            .Add([.. Enumerable.Range(0, 3).Select(i => new StagedJobPart($"J{i}", "D1") { SourceOrder = 2, WithJobRow = false, Description = "drain motor" })])
            .Add(new StagedOrder("O1", "Kettwell", "D1") { SourceOrder = 3, Description = "Drain motor" })
            .Combine();
        Assert.Equal(["drain_motor"], shop.Rows("from job_parts select distinct component"));
        Assert.Equal(["drain_motor"], shop.Rows("from part_orders select component"));
    }

    [Fact]
    public void Combine_FittedPart_SupplierFromOrderElseOnlySeller()
    {
        using var shop = new TransformShop();
        shop.Add(new StagedPart("A1") { SourceOrder = 1 }, new StagedPart("B1") { SourceOrder = 1 })
            .Add(
                new StagedOrder("O1", "Haldor", "A1") { SourceOrder = 2, JobId = "J1" },
                new StagedOrder("O2", "Brix", "A1") { SourceOrder = 2 },
                new StagedOrder("O3", "Brix", "B1") { SourceOrder = 2 },
                new StagedOrder("O4", "Haldor", "B1") { SourceOrder = 2, OrderedOn = new(2024, 12, 1) })
            .Add(new StagedJob("J1") { SourceOrder = 3 }, new StagedJob("J2") { SourceOrder = 3 })
            .Add(
                new StagedJobPart("J1", "A1") { SourceOrder = 3, SourceLine = 2 },
                new StagedJobPart("J2", "A1") { SourceOrder = 3, SourceLine = 3 },
                new StagedJobPart("J2", "B1") { SourceOrder = 3, SourceLine = 3, GroupNo = 2 })
            .Combine();
        Assert.Equal(["J1|A1|Haldor", "J2|A1|-", "J2|B1|Brix"], shop.Rows("from job_parts select job_id, part_number, supplier order by 1, 2"));
    }

    [Fact]
    public void Combine_Fitments_ListedSeenAndByWildcard()
    {
        using var shop = new TransformShop();
        shop.Add(new StagedModel("WE100", "F1"), new StagedModel("WE200", "F1"), new StagedModel("DX1", "F2"))
            .Add(new StagedArrow("OLD", "A1") { SourceOrder = 1 })
            .Add(new StagedFitment("OLD") { SourceOrder = 2, ModelRaw = "WE*", ModelPattern = "WE%", Quantity = 2 }, new StagedFitment("C1") { SourceOrder = 2, ModelFamily = "F2" })
            .Add(new StagedJob("J1") { SourceOrder = 3, ModelRaw = "WE100" })
            .Add(
                new StagedJobPart("J1", "A1") { SourceOrder = 3, SourceLine = 2 },
                new StagedJobPart("J1", "C1") { SourceOrder = 3, SourceLine = 2, GroupNo = 2 })
            .Combine();
        Assert.Equal(
            ["F1|A1|both|1|2|2024-03-04", "F1|C1|seen|1|1|2024-03-04", "F2|C1|listed|0|1|-"],
            shop.Rows("from fitments select model_family, part_number, basis, times_seen, typical_quantity, last_seen"));
    }

    [Fact]
    public void Combine_ListedChoices_MeanEitherLetterAndSlashesOfTheListStay()
    {
        using var shop = new TransformShop();
        shop.Add(new StagedModel("WE46R", "F1"), new StagedModel("WE46L", "F2"), new StagedModel("WE46C", "F3"), new StagedModel("W/E100", "F4"), new StagedModel("E100", "F5"))
            .Add(
                new StagedFitment("A1") { SourceOrder = 2, ModelRaw = "WE46R/L", ModelPattern = "WE46R|WE46L" },
                new StagedFitment("B1") { SourceOrder = 2, ModelRaw = "W/E100", ModelPattern = "W100|E100" })
            .Combine();
        Assert.Equal(["F1|A1", "F2|A1", "F4|B1"], shop.Rows("from fitments select model_family, part_number"));
    }

    [Fact]
    public void Combine_VanCounts_NewestCountOfAPartCounts()
    {
        using var shop = new TransformShop();
        shop.Add(
            new StagedCount("1", "A1", 4) { SourceOrder = 2, CountedOn = new(2024, 1, 31) },
            new StagedCount("1", "A1", 2) { SourceOrder = 1, CountedOn = new(2024, 2, 28) },
            new StagedCount("2", "A1", 7) { SourceOrder = 1, CountedOn = new(2024, 2, 28) }).Combine();
        Assert.Equal(["1|2", "2|7"], shop.Rows("from van_counts select van, on_hand order by 1"));
    }
}

/// <summary>Jobs that ended in every way, some with components and some with visits, combined once.</summary>
public sealed class EndedJobs : IDisposable
{
    private static readonly (string Outcome, string Components)[] Fitted =
    [
        ("fixed_with_part", "fill_hose,inlet_valve"), ("fixed_with_part", "fill_hose"), ("fixed_with_part", ""), ("fixed_with_part", "?"), ("fixed_without_part", ""),
        ("no_fault_found", ""), ("part_ordered", ""), ("declined", ""), ("fixed", "inlet_valve"), ("fixed", ""),
    ];

    private static readonly (string Outcome, int? Visits, bool Closed)[] Visited =
        [("fixed_with_part", 1, true), ("fixed_without_part", 2, true), ("part_ordered", 1, false), ("fixed_with_part", null, true), ("declined", 1, true)];

    public EndedJobs() => Shop
        .Add([
            .. Fitted.Select(f => new StagedJob($"{f.Outcome}:{f.Components}") { SourceOrder = 1, Outcome = f.Outcome }),
            .. Visited.Select(v => new StagedJob(Name(v.Outcome, v.Visits, v.Closed)) { SourceOrder = 1, Outcome = v.Outcome, Visits = v.Visits, ClosedOn = v.Closed ? new DateOnly(2024, 3, 5) : null }),
            new StagedJob("with a part") { SourceOrder = 1 }])
        .Add([
            .. Fitted.SelectMany((f, job) => f.Components.Split(',', StringSplitOptions.RemoveEmptyEntries).Select((c, i) =>
                new StagedJobPart($"{f.Outcome}:{f.Components}", $"Q{job}-{i}") { SourceOrder = 1, SourceLine = job + 2, GroupNo = i + 1, Component = c == "?" ? null : c })),
            new StagedJobPart("with a part", "P9") { SourceOrder = 1, SourceLine = Fitted.Length + Visited.Length + 2 }])
        .Combine();

    internal TransformShop Shop { get; } = new();

    public void Dispose() => Shop.Dispose();

    internal static string Name(string outcome, int? visits, bool closed) => $"{outcome} {visits} {closed}";
}
