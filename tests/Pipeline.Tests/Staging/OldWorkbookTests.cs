using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Staging;
using PartsSignal.Pipeline.Tests.Reading;

namespace PartsSignal.Pipeline.Tests.Staging;

/// <summary>Workbooks in the older binary form.</summary>
public sealed class OldWorkbookTests
{
    private static readonly SourceMap Orders = new()
    {
        Files = "orders.xls",
        Kind = "part_orders",
        Columns = new Dictionary<string, IReadOnlyList<string>> { ["order_id"] = ["Order"], ["ordered_on"] = ["Ordered"], ["part"] = ["Part"], ["unit_cost"] = ["Cost"] },
    };

    private static XlsMaker Header(XlsMaker maker, string sheet = "Orders") =>
        maker.AddSheet(sheet).Text(0, 0, "Order").Text(0, 1, "Ordered").Text(0, 2, "Part").Text(0, 3, "Cost");

    private static async Task<StagedFile> StageAsync(StagingRig rig, XlsMaker maker, SourceMap? map = null)
    {
        rig.Write("orders.xls", maker.Make());
        return (await rig.StageAllAsync(new ShopSettings { Sources = [map ?? Orders] })).Single();
    }

    [Theory]
    [InlineData(false, 46_237)]
    [InlineData(true, 44_775)]
    public async Task StageAsync_TextNumbersDatesAndFormulas_ReadInBothDateSystems(bool dates1904, int day)
    {
        using var rig = new StagingRig();
        StagedFile file = await StageAsync(rig, Header(new XlsMaker(dates1904))
            .Text(1, 0, "1").Number(1, 1, day, date: true).Text(1, 2, "00860001").Number(1, 3, 4.5)
            .Text(2, 0, "2").Number(2, 1, day, date: true).Number(2, 2, 60_001).Formula(2, 3, 6.3));
        Assert.Equal(["1|2026-08-03|00860001|4.50", "2|2026-08-03|60001|6.30"], StagingRig.Rows(file, "staged_part_orders", "order_id, ordered_on, part_raw, unit_cost"));
    }

    [Fact]
    public async Task StageAsync_FailedFormulas_Rejects()
    {
        using var rig = new StagingRig();
        StagedFile file = await StageAsync(rig, Header(new XlsMaker())
            .Text(1, 0, "1").Number(1, 1, 46_237, date: true).Text(1, 2, "A").FailedFormula(1, 3, 0x07)
            .Text(2, 0, "2").Number(2, 1, 46_237, date: true).Text(2, 2, "A").Error(2, 3, 0x2a)
            .Text(3, 0, "3").Number(3, 1, 46_237, date: true).Text(3, 2, "A").Number(3, 3, 2));
        Assert.Equal(["2|unit_cost|formula_error", "3|unit_cost|formula_error"], StagingRig.Rejects(file));
        Assert.Equal(["3"], StagingRig.Rows(file, "staged_part_orders", "order_id"));
    }

    [Fact]
    public async Task StageAsync_SheetByNameAndMergedHeader_Found()
    {
        using var rig = new StagingRig();
        XlsMaker maker = new XlsMaker().AddSheet("Notes").Text(0, 0, "nothing here");
        maker.AddSheet("Orders").Text(0, 0, "Orders of the shop")
            .Text(2, 0, "Order").Text(2, 1, "Ordered").Text(2, 2, "Part").Text(2, 4, "Cost").Merge(2, 2, 3)
            .Text(3, 0, "1").Number(3, 1, 46_237, date: true).Text(3, 2, "A-1").Text(3, 3, "x").Number(3, 4, 2.5);
        StagedFile file = await StageAsync(rig, maker, Orders with { Sheet = "Orders" });
        Assert.Equal(["1|A-1|2.50|4"], StagingRig.Rows(file, "staged_part_orders", "order_id, part_raw, unit_cost, source_line"));
    }

    [Fact]
    public async Task StageAsync_DamagedOldWorkbook_Refused()
    {
        using var rig = new StagingRig();
        byte[] workbook = Header(new XlsMaker()).Make();
        rig.Write("orders.xls", workbook[..600]);
        Assert.Equal("broken_file", (await rig.StageAllAsync(new ShopSettings { Sources = [Orders] })).Single().Refused?.Code);
    }

    [Theory]
    [InlineData(9)]
    [InlineData(30)]
    [InlineData(70)]
    [InlineData(500)]
    [InlineData(600)]
    public async Task StageAsync_CutShort_RefusedByItself(int bytes)
    {
        using var rig = new StagingRig();
        rig.Write("orders.xls", Header(new XlsMaker()).Text(1, 0, "1").Text(1, 2, "A1").Make()[..bytes]);
        rig.Write("orders.csv", "Order,Ordered,Part,Cost\n1,2026-08-03,A1,4.50\n");
        IReadOnlyList<StagedFile> files = await rig.StageAllAsync(new ShopSettings { Sources = [Orders, Orders with { Files = "orders.csv" }] });
        Assert.Equal(["broken_file", null], files.Select(f => f.Refused?.Code));
    }

    [Fact]
    public async Task StageAsync_CellInAColumnThatNoSheetHas_Refused()
    {
        using var rig = new StagingRig();
        StagedFile file = await StageAsync(rig, Header(new XlsMaker()).Text(1, 0, "1").Text(1, 40_000, "A1"));
        Assert.Equal("broken_file", file.Refused?.Code);
        Assert.Contains("columns", file.Refused!.Message, StringComparison.Ordinal);
    }
}
