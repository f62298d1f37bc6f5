using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Staging;
using static PartsSignal.Pipeline.Tests.Reading.WorkbookMaker;

namespace PartsSignal.Pipeline.Tests.Staging;

public sealed class WorkbookCasesTests
{
    private static readonly SourceMap Orders = new()
    {
        Files = "orders.xlsx",
        Kind = "part_orders",
        Columns = new Dictionary<string, IReadOnlyList<string>>
        {
            ["order_id"] = ["Order"],
            ["ordered_on"] = ["Ordered"],
            ["part"] = ["Part"],
            ["unit_cost"] = ["Cost"],
        },
    };

    private static readonly string[] Header = [Text("Order"), Text("Ordered"), Text("Part"), Text("Cost")];

    private static async Task<StagedFile> StageAsync(StagingRig rig, byte[] workbook, SourceMap? map = null)
    {
        rig.Write("orders.xlsx", workbook);
        return (await rig.StageAllAsync(new ShopSettings { Sources = [map ?? Orders] })).Single();
    }

    [Fact]
    public async Task StageAsync_NumbersThatWereCodes_DamagedOnesAreRejectsWithTheirPlaceTextStays()
    {
        using var rig = new StagingRig();
        StagedFile file = await StageAsync(rig, Make(
        [
            Header,
            [Text("1"), Number("45000", 1), Number("1E10", 2), Number("4.5")],
            [Text("2"), Number("45000", 1), Text("1E10"), Number("4.5")],
            [Text("3"), Number("45000", 1), Number("1234567890123456789"), Number("4.5")],
            [Text("4"), Number("45000", 1), Text("00860001"), Number("4.5")],
            [Text("5"), Number("45000", 1), Number("60001"), Number("4.5")],
            [Text("6"), Number("45000", 1), Number("36951", 1), Number("4.5")],
        ]));
        Assert.Equal(["2|1E10", "4|00860001", "5|60001"], StagingRig.Rows(file, "staged_part_orders", "order_id, part_raw"));
        Assert.Equal(["2|part|damaged_by_spreadsheet", "4|part|damaged_by_spreadsheet", "7|part|damaged_by_spreadsheet"], StagingRig.Rejects(file));
        Assert.Contains("Sheet1!C2", File.ReadAllText(file.RawRejects!), StringComparison.Ordinal);
    }

    [Fact]
    public async Task StageAsync_NoteRightOfTheHeader_RowIsRead()
    {
        using var rig = new StagingRig();
        StagedFile file = await StageAsync(rig, Make([Header, [Text("1"), Number("45000", 1), Text("A"), Number("4.5"), Text("paid by check")], [Text("2"), Number("45000", 1), Text("B"), Number("4.5")]]));
        Assert.Equal(["1|A", "2|B"], StagingRig.Rows(file, "staged_part_orders", "order_id, part_raw"));
        Assert.Empty(StagingRig.Rejects(file));
    }

    [Fact]
    public async Task StageAsync_SameDayInBothDateSystems_SameDate()
    {
        using var rig = new StagingRig();
        StagedFile from1900 = await StageAsync(rig, Make([Header, [Text("1"), Number("46237", 1), Text("A"), ""]]));
        IReadOnlyList<string> day1900 = StagingRig.Rows(from1900, "staged_part_orders", "ordered_on");
        StagedFile from1904 = await StageAsync(rig, Make([Header, [Text("1"), Number("44775", 1), Text("A"), ""]], dates1904: true));
        Assert.Equal(["2026-08-03"], day1900);
        Assert.Equal(day1900, StagingRig.Rows(from1904, "staged_part_orders", "ordered_on"));
    }

    [Fact]
    public async Task StageAsync_FormulaAndFailedFormula_ValueReadAndFailureRejected()
    {
        using var rig = new StagingRig();
        StagedFile file = await StageAsync(rig, Make(
        [
            Header,
            [Text("1"), Number("45000", 1), Text("A"), Formula("2*3.15", "6.3")],
            [Text("2"), Number("45000", 1), Text("A"), Error("#DIV/0!")],
        ]));
        Assert.Equal(["1|6.30"], StagingRig.Rows(file, "staged_part_orders", "order_id, unit_cost"));
        Assert.Equal(["3|unit_cost|formula_error"], StagingRig.Rejects(file));
    }

    [Fact]
    public async Task StageAsync_NotesAboveAndMergedHeader_HeaderFound()
    {
        using var rig = new StagingRig();
        StagedFile file = await StageAsync(rig, Make(
            [
                [Text("Orders of the shop")],
                [],
                [Text("Order"), Text("Ordered"), Text("Part"), "", Text("Cost")],
                [Text("1"), Number("45000", 1), Text("A-1"), Text("x"), Number("2.5")],
            ],
            merges: "<mergeCells count=\"1\"><mergeCell ref=\"C3:D3\"/></mergeCells>"));
        Assert.Equal(["1|A-1|2.50|4"], StagingRig.Rows(file, "staged_part_orders", "order_id, part_raw, unit_cost, source_line"));
    }

    [Fact]
    public async Task StageAsync_NoSuchSheet_RefusedWithTheSheetsThereAre()
    {
        using var rig = new StagingRig();
        BadInputException bad = await Assert.ThrowsAsync<BadInputException>(() => StageAsync(rig, Make([Header], sheet: "Orders 2026"), Orders with { Sheet = "Orders" }));
        Assert.Contains("Orders 2026", bad.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task StageAsync_WorkbookThatUnpacksTooLarge_Refused()
    {
        using var rig = new StagingRig();
        rig.Write("orders.xlsx", Make([Header, [Text(new string('a', 200_000)), "", "", ""]]));
        var settings = new ShopSettings { Sources = [Orders], Limits = new() { MaxWorkbookBytes = 100_000 } };
        StagedFile file = (await rig.StageAllAsync(settings)).Single();
        Assert.Equal("too_large", file.Refused?.Code);
        Assert.Contains("maxWorkbookBytes", file.Refused!.Suggestion, StringComparison.Ordinal);
    }

    [Fact]
    public async Task StageAsync_BytesThatAreNoWorkbook_Refused()
    {
        using var rig = new StagingRig();
        Assert.Equal("broken_file", (await StageAsync(rig, "not a workbook at all"u8.ToArray())).Refused?.Code);
    }
}
