using PartsSignal.Pipeline.Combining;

namespace PartsSignal.Pipeline.Tests.Combining;

public sealed class NumberResolutionTests
{
    [Theory]
    [InlineData("WX-4070A", "WX-4070A|exact")]
    [InlineData("wx 4070 a", "WX-4070A|compact")]
    [InlineData("WX-4O7OA", "WX-4070A|confusable")]
    [InlineData("7129.45", "AB-100|alias")]
    [InlineData("712945", "AB-100|alias")]
    [InlineData("WX-4071A", "-|unresolved")]
    [InlineData("00860001", "00860001|exact")]
    [InlineData("60001", "60001|exact")]
    [InlineData("CO1", "CO1|exact")]
    [InlineData("C0L", "-|unresolved")]
    public void Combine_TypedNumber_Resolves(string typed, string expected)
    {
        using var shop = new CombineShop();
        shop.Add([.. new[] { "WX-4070A", "AB-100", "00860001", "60001", "CO1", "C01" }.Select(p => new StagedPart(p) { SourceOrder = 1 })])
            .Add(new StagedAlias("Brix", "7129.45", "AB-100") { SourceOrder = 2 })
            .Add(new StagedJob("J1") { SourceOrder = 3 })
            .Add(new StagedJobPart("J1", typed) { SourceOrder = 3, SourceLine = 2 })
            .Combine();
        Assert.Equal([expected], shop.Rows("from job_parts select part_number, part_basis"));
    }

    [Fact]
    public void Combine_OrderLineWithBothNumbers_TeachesTheAlias()
    {
        using var shop = new CombineShop();
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
        using var shop = new CombineShop();
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
        using var shop = new CombineShop();
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
    public void Combine_OldNumber_IsFollowedWithKitAndAlternative()
    {
        using var shop = new CombineShop();
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
        using var shop = new CombineShop();
        shop.Add(new StagedArrow("W1", "W2") { SourceOrder = 1, EffectiveOn = new(2024, 1, 1) }, new StagedArrow("W2", "W3") { SourceOrder = 1, EffectiveOn = new(2024, 9, 1) })
            .Add(new StagedJob("J1") { SourceOrder = 2 })
            .Combine(new CombineOptions { AsOf = new DateOnly(2024, 4, 1) });
        Assert.Equal(["W1|W2", "W2|W2", "W3|W3"], shop.Rows("from parts select part_number, current_number order by 1"));
    }

    [Fact]
    public void Combine_CyclesAndForks_AreReported()
    {
        using var shop = new CombineShop();
        shop.Add([.. new (string, string)[] { ("A", "B"), ("B", "C"), ("C", "A"), ("Z", "Z"), ("F", "G"), ("F", "H") }
                .Select(a => new StagedArrow(a.Item1, a.Item2) { SourceOrder = 1 })])
            .Combine();
        Assert.Equal(["A|A", "B|B", "C|C", "F|G", "Z|Z"], shop.Rows("from parts select part_number, current_number where part_number not in ('G', 'H') order by 1"));
        Assert.Equal(
            ["supersession_cycle|A|2", "supersession_cycle|B|3", "supersession_cycle|C|4", "supersession_cycle|Z|5", "supersession_fork|F|6", "supersession_fork|F|7"],
            shop.Rows("from data_faults select fault_kind, subject, source_line"));
    }
}
