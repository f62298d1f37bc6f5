using PartsSignal.Pipeline.Transform;

namespace PartsSignal.Pipeline.Tests.Transform;

public sealed class NumberResolutionTests
{
    [Fact]
    public void Combine_TypedNumbers_Resolve()
    {
        (string Typed, string Expected)[] cases =
        [
            ("WX-4070A", "WX-4070A|exact"),
            ("wx 4070 a", "WX-4070A|compact"),
            ("WX-4O7OA", "WX-4070A|confusable"),
            ("7129.45", "AB-100|alias"),
            ("712945", "AB-100|alias"),
            ("WX-4071A", "-|unresolved"),
            ("00860001", "00860001|exact"),
            ("60001", "60001|exact"),
            ("CO1", "CO1|exact"),
            ("C0L", "-|unresolved"),
        ];
        using var shop = new TransformShop();
        shop.Add([.. new[] { "WX-4070A", "AB-100", "00860001", "60001", "CO1", "C01" }.Select(p => new StagedPart(p) { SourceOrder = 1 })])
            .Add(new StagedAlias("Brix", "7129.45", "AB-100") { SourceOrder = 2 })
            .Add([.. cases.Select((_, i) => new StagedJob($"J{i}") { SourceOrder = 3 })])
            .Add([.. cases.Select((c, i) => new StagedJobPart($"J{i}", c.Typed) { SourceOrder = 3, SourceLine = 2 + i })])
            .Combine();
        Assert.Equal(cases.Select(c => $"{c.Typed}: {c.Expected}"), shop.Rows("from job_parts select part_raw || ': ' || coalesce(part_number, '-') || '|' || part_basis order by job_id"));
    }

    [Fact]
    public void Combine_OrderLineWithBothNumbers_TeachesTheAlias()
    {
        using var shop = new TransformShop();
        shop.Add(new StagedPart("AB-100") { SourceOrder = 1 })
            .Add(new StagedOrder("O1", "Haldor", "HV40213") { SourceOrder = 2, OtherRaw = "ab100" })
            .Add(new StagedJob("J1") { SourceOrder = 3 })
            .Add(new StagedJobPart("J1", "HV 40213") { SourceOrder = 3, SourceLine = 2 })
            .Combine();
        Assert.Equal(["AB-100|compact"], shop.Rows("from part_orders select part_number, part_basis"));
        Assert.Equal(["AB-100|alias|Haldor"], shop.Rows("from job_parts select part_number, part_basis, supplier"));
        Assert.Equal(["Haldor|HV40213|AB-100|order line"], shop.Rows("from part_aliases select supplier, alias, part_number, basis"));
    }

    [Fact]
    public void Combine_AliasOfTwoParts_IsNotFollowedAndReported()
    {
        using var shop = new TransformShop();
        shop.Add(new StagedPart("AB-100") { SourceOrder = 1 }, new StagedPart("AB-200") { SourceOrder = 1 })
            .Add(new StagedAlias("Brix", "77.1", "AB-100") { SourceOrder = 2 }, new StagedAlias("Brix", "77.1", "AB-200") { SourceOrder = 2 })
            .Add(new StagedJob("J1") { SourceOrder = 3 })
            .Add(new StagedJobPart("J1", "77.1") { SourceOrder = 3, SourceLine = 2 })
            .Combine();
        Assert.Equal(["-|unresolved"], shop.Rows("from job_parts select part_number, part_basis"));
        Assert.Equal(["alias_of_two_parts|77.1"], shop.Rows("from data_faults select fault_kind, subject"));
    }

    [Fact]
    public void Combine_TwoWritingsInOneList_StayTwoParts()
    {
        using var shop = new TransformShop();
        shop.Add(new StagedPart("AB-12/3") { SourceOrder = 1 }, new StagedPart("AB-1/23") { SourceOrder = 1 })
            .Add(new StagedJob("J1") { SourceOrder = 3 })
            .Add(
                new StagedJobPart("J1", "AB-12/3") { SourceOrder = 3, SourceLine = 2 },
                new StagedJobPart("J1", "AB123") { SourceOrder = 3, SourceLine = 2, GroupNo = 2 })
            .Combine();
        Assert.Equal(["AB-12/3|exact", "-|unresolved"], shop.Rows("from job_parts select part_number, part_basis order by line"));
        Assert.Equal(2, shop.Rows("from data_faults where fault_kind = 'part_number_collision'").Count);
    }

    [Fact]
    public void Combine_ArrowOfOneOfTwoWritings_IsThatOnesAlone()
    {
        using var shop = new TransformShop();
        shop.Add(new StagedPart("AB-12/3") { SourceOrder = 1 }, new StagedPart("AB-1/23") { SourceOrder = 1 })
            .Add(new StagedArrow("ab-12/3", "CD-900") { SourceOrder = 2 })
            .Combine();
        Assert.Equal(["AB-1/23|AB-1/23", "AB-12/3|CD-900", "CD-900|CD-900"], shop.Rows("from parts select part_number, current_number order by 1"));
    }

    [Fact]
    public void Combine_OldNumber_IsFollowedWithKitAndAlternative()
    {
        using var shop = new TransformShop();
        shop.Add(
                new StagedArrow("W100", "W101") { SourceOrder = 1 },
                new StagedArrow("W101", "W250") { SourceOrder = 1 },
                new StagedArrow("K1", "P1") { SourceOrder = 1, Kind = "kit_part" },
                new StagedArrow("K1", "P2") { SourceOrder = 1, Kind = "kit_part", Quantity = 2 },
                new StagedArrow("A1", "A2") { SourceOrder = 1, Kind = "alternative" },
                new StagedArrow("A1", "A3") { SourceOrder = 1, Kind = "alternative" },
                new StagedArrow("E1", null) { SourceOrder = 1, Kind = "no_longer_made" })
            .Add(new StagedJob("J1") { SourceOrder = 2 })
            .Add(
                new StagedJobPart("J1", "W100") { SourceOrder = 2, SourceLine = 2, UnitPrice = 9 },
                new StagedJobPart("J1", "K1") { SourceOrder = 2, SourceLine = 2, GroupNo = 2, Quantity = 3, UnitPrice = 5 },
                new StagedJobPart("J1", "A1") { SourceOrder = 2, SourceLine = 2, GroupNo = 3 },
                new StagedJobPart("J1", "E1") { SourceOrder = 2, SourceLine = 2, GroupNo = 4 })
            .Combine();
        Assert.Equal(
            ["1|W250|W100|1|9.00", "2|P1|K1|3|5.00", "3|P2|K1|6|-", "4|A2|A1|1|-", "5|E1|E1|1|-"],
            shop.Rows("from job_parts select line, part_number, fitted_number, quantity, unit_price order by line"));
        Assert.Equal(["A1|A2|yes", "E1|E1|no", "K1|P1|yes"], shop.Rows("from parts select part_number, current_number, available where part_number in ('A1', 'E1', 'K1') order by 1"));
        Assert.Empty(shop.Rows("from data_faults"));
    }

    [Fact]
    public void Combine_FutureArrow_IsNotFollowedYet()
    {
        using var shop = new TransformShop();
        shop.Add(new StagedArrow("W1", "W2") { SourceOrder = 1, EffectiveOn = new(2024, 1, 1) }, new StagedArrow("W2", "W3") { SourceOrder = 1, EffectiveOn = new(2024, 9, 1) })
            .Add(new StagedJob("J1") { SourceOrder = 2 })
            .Combine(new TransformOptions { AsOf = new DateOnly(2024, 4, 1) });
        Assert.Equal(["W1|W2", "W2|W2", "W3|W3"], shop.Rows("from parts select part_number, current_number order by 1"));
    }

    [Fact]
    public void Combine_CyclesAndForks_AreReported()
    {
        using var shop = new TransformShop();
        shop.Add([.. new (string, string)[] { ("A", "B"), ("B", "C"), ("C", "A"), ("Z", "Z"), ("F", "G"), ("F", "H") }
                .Select(a => new StagedArrow(a.Item1, a.Item2) { SourceOrder = 1 })])
            .Combine();
        Assert.Equal(["A|A", "B|B", "C|C", "F|G", "Z|Z"], shop.Rows("from parts select part_number, current_number where part_number not in ('G', 'H') order by 1"));
        Assert.Equal(
            ["supersession_cycle|A|2", "supersession_cycle|B|3", "supersession_cycle|C|4", "supersession_cycle|Z|5", "supersession_fork|F|6", "supersession_fork|F|7"],
            shop.Rows("from data_faults select fault_kind, subject, source_line"));
    }

    [Fact]
    public void Combine_NoLists_LearnsTheNumbersFromOrderAndJobLines()
    {
        using var shop = new TransformShop();
        shop.Add(
                new StagedOrder("O1", "Haldor", "HV40213") { SourceOrder = 1, OtherRaw = "AB-1000", UnitCost = 12.5m, Component = "inlet_valve", Description = "Inlet valve" },
                new StagedOrder("O2", "Haldor", "CD-2000") { SourceOrder = 1 })
            .Add([.. Enumerable.Range(1, 6).Select(i => new StagedJob($"J{i}") { SourceOrder = 2 })])
            .Add(
                new StagedJobPart("J1", "ab 1000") { SourceOrder = 2, SourceLine = 2 },
                new StagedJobPart("J2", "HV40213") { SourceOrder = 2, SourceLine = 3 },
                new StagedJobPart("J3", "AB-1OOO") { SourceOrder = 2, SourceLine = 4 },
                new StagedJobPart("J4", "CD-2001") { SourceOrder = 2, SourceLine = 5 },
                new StagedJobPart("J5", "EF-777") { SourceOrder = 2, SourceLine = 6 },
                new StagedJobPart("J6", "various") { SourceOrder = 2, SourceLine = 7 })
            .Combine();
        Assert.Equal(
            ["J1|AB-1000|compact|inlet_valve", "J2|AB-1000|alias|inlet_valve", "J3|AB-1000|confusable|inlet_valve", "J4|-|unresolved|-", "J5|EF-777|exact|-", "J6|-|unresolved|-"],
            shop.Rows("from job_parts select job_id, part_number, part_basis, component order by 1"));
        Assert.Equal(["AB-1000|seen|12.50|Haldor", "CD-2000|seen|-|-", "EF-777|seen|-|-"], shop.Rows("from parts select part_number, basis, price, supplier order by 1"));
        Assert.Equal(["HV40213|AB-1000|order line"], shop.Rows("from part_aliases select alias, part_number, basis"));
    }

    [Fact]
    public void Combine_NoListsTwoLookAlikesOftenSeen_StayTwoParts()
    {
        using var shop = new TransformShop();
        string[] numbers = ["QD500", "QD500", "QD5OO", "QD5OO", "QD50O"];
        shop.Add([.. numbers.Select((_, i) => new StagedJob($"J{i}") { SourceOrder = 1 })])
            .Add([.. numbers.Select((n, i) => new StagedJobPart($"J{i}", n) { SourceOrder = 1, SourceLine = i + 2 })])
            .Combine();
        Assert.Equal(["QD500", "QD500", "QD5OO", "QD5OO", "-"], shop.Rows("from job_parts select part_number order by job_id"));
    }

    [Fact]
    public void Combine_PriceList_UnknownNumbersAreNotLearned()
    {
        using var shop = new TransformShop();
        shop.Add(new StagedPart("AB-1000") { SourceOrder = 1 }).Add(new StagedOrder("O2", "Haldor", "CD-2000") { SourceOrder = 2 }).Combine();
        Assert.Equal(["AB-1000|listed"], shop.Rows("from parts select part_number, basis"));
    }

    [Fact]
    public void Combine_ArrowsOfMarch_GiveTheNumbersOfMarch()
    {
        StagedArrow[] arrows =
        [
            new("W1", "W2") { SourceOrder = 1, EffectiveOn = new(2024, 1, 15) },
            new("W2", "K1") { SourceOrder = 1, EffectiveOn = new(2024, 4, 2), Kind = "kit_part", Quantity = 2 },
            new("W2", "K2") { SourceOrder = 1, EffectiveOn = new(2024, 4, 2), Kind = "kit_part" },
            new("K1", "W1") { SourceOrder = 1, EffectiveOn = new(2024, 6, 1) },
        ];
        foreach ((DateOnly day, string[] fitted, int faults) in new (DateOnly, string[], int)[]
            {
                (new(2024, 1, 1), ["W1|3"], 0), (new(2024, 3, 31), ["W2|3"], 0), (new(2024, 4, 30), ["K1|6", "K2|3"], 0), (new(2024, 6, 30), ["W1|3"], 3),
            })
        {
            using var shop = new TransformShop();
            shop.Add(arrows).Add(new StagedJob("J1") { SourceOrder = 2 }).Add(new StagedJobPart("J1", "W1") { SourceOrder = 2, SourceLine = 2, Quantity = 3 })
                .Combine(new TransformOptions { AsOf = day });
            Assert.Equal(fitted, shop.Rows("from job_parts select part_number, quantity order by line"));
            Assert.Equal(faults, shop.Rows("from data_faults where fault_kind = 'supersession_cycle'").Count);
        }
    }

    [Fact]
    public void Combine_ContradictingArrows_AreReportedWithTheirRows()
    {
        using var shop = new TransformShop();
        shop.Add(
                new StagedArrow("A1", "A2") { SourceOrder = 1 },
                new StagedArrow("A1", "A3") { SourceOrder = 1, Kind = "kit_part", Quantity = 2 },
                new StagedArrow("E1", "E2") { SourceOrder = 1, EffectiveOn = new(2020, 1, 1) },
                new StagedArrow("E1", null) { SourceOrder = 1, Kind = "no_longer_made", EffectiveOn = new(2021, 1, 1) })
            .Add(new StagedJob("J1") { SourceOrder = 2 }).Add(new StagedJobPart("J1", "A1") { SourceOrder = 2, SourceLine = 2 })
            .Combine();
        Assert.Equal(
            ["supersession_contradiction|A1|file-1.csv|2", "supersession_contradiction|A1|file-1.csv|3", "supersession_contradiction|E1|file-1.csv|5"],
            shop.Rows("from data_faults select fault_kind, subject, source_file, source_line"));
        Assert.Equal(["A3|2"], shop.Rows("from job_parts select part_number, quantity"));
    }
}
