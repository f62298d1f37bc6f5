using ExcelDataReader;
using PartsSignal.Analysis.Statistics;
using PartsSignal.Reports.Components;
using PartsSignal.Reports.Tests.Monthly;
using PartsSignal.Reports.Workbook;

namespace PartsSignal.Reports.Tests.Workbook;

public sealed class WorkbookWriterTests
{
    static WorkbookWriterTests() => System.Text.Encoding.RegisterProvider(System.Text.CodePagesEncodingProvider.Instance);

    private static readonly TableView Sample = new("sample", "A table", "3 jobs", [new("Name"), new("Share", CellKind.Share), new("Price", CellKind.Money), new("Day", CellKind.Day), new("Count", CellKind.Count)],
    [
        ["=1+1", Estimate.From(0.25, 0.1, 0.5), 12.34m, new DateOnly(2024, 2, 29), 7L],
        ["\t=cmd|' /C calc'!A0", Estimate.None("too few"), null, null, null],
        ["00860001 <b>&\u0001", null, 1m, new DateOnly(1999, 12, 31), 1],
    ]);

    [Fact]
    public void Write_EveryKindOfCell_ReadsBackAsThatKind()
    {
        object?[][] rows = ReadBack([Sample], "A table");
        Assert.Equal(["Name", "Share", "from", "to", "why not", "Price", "Day", "Count"], rows[0]);
        Assert.Equal(["=1+1", 0.25, 0.1, 0.5, null, 12.34, new DateTime(2024, 2, 29), 7d], rows[1]);
        Assert.Equal(["\t=cmd|' /C calc'!A0", null, null, null, "too few", null, null, null], rows[2]);
        Assert.Equal("00860001 <b>&\uFFFD", rows[3][0]);
    }

    [Fact]
    public void Write_SameTables_GivesSameBytes() => Assert.Equal(Bytes([Sample]), Bytes([Sample]));

    [Fact]
    public void Write_FullMonth_OneSheetPerTableAndAListFirst()
    {
        IReadOnlyList<TableView> sheets = SampleMonth.Full().Report().Tables;
        object?[][] contents = ReadBack(sheets, "Contents");
        Assert.Equal(sheets.Count, contents.Length - 1);
        Assert.Equal(sheets.Select(s => s.Title), contents.Skip(1).Select(r => (string)r[1]!));
    }

    [Theory]
    [InlineData("Contradictions in the data", "Contradictions in the data")]
    [InlineData("Rows that could not be read, by reason", "Rows that could not be read")]
    [InlineData("The plan beside other ways of stocking", "The plan beside other ways")]
    [InlineData("Jobs behind it: drain pump of the Norrad K41", "Jobs behind it: drain pump")]
    public void Short_Title_EndsWithAWholeWord(string title, string name) => Assert.Equal(name, SheetNames.Short(title));

    [Fact]
    public void Write_TitlesThatCollideOrAreTooLong_StillNameSheetsApart()
    {
        string name = new('x', 40);
        TableView[] sheets = [Sample with { Title = name }, Sample with { Title = name }, Sample with { Title = "a/b:c" }];
        Assert.Equal(["Contents", new string('x', 31), new string('x', 29) + " 2", "a b c"], Names(sheets));
    }

    [Fact]
    public void Write_PlainSheets_StandWithoutAList()
    {
        using var stream = new MemoryStream();
        WorkbookWriter.Write(stream, [new WorkbookSheet("1 Norrad: spares", ["Part"], [[new WorkbookCell("PX-1", CellKind.Code)]])]);
        using IExcelDataReader reader = ExcelReaderFactory.CreateOpenXmlReader(new MemoryStream(stream.ToArray()));
        Assert.Equal("1 Norrad  spares", reader.Name);
        Assert.False(reader.NextResult());
    }

    private static byte[] Bytes(IReadOnlyList<TableView> sheets)
    {
        using var stream = new MemoryStream();
        WorkbookWriter.Write(stream, TableSheets.From(sheets));
        return stream.ToArray();
    }

    private static List<string> Names(IReadOnlyList<TableView> sheets)
    {
        using IExcelDataReader reader = ExcelReaderFactory.CreateOpenXmlReader(new MemoryStream(Bytes(sheets)));
        var names = new List<string>();
        do
        {
            names.Add(reader.Name);
        }
        while (reader.NextResult());
        return names;
    }

    private static object?[][] ReadBack(IReadOnlyList<TableView> sheets, string name)
    {
        using IExcelDataReader reader = ExcelReaderFactory.CreateOpenXmlReader(new MemoryStream(Bytes(sheets)));
        while (reader.Name != name)
        {
            Assert.True(reader.NextResult());
        }

        var rows = new List<object?[]>();
        while (reader.Read())
        {
            rows.Add([.. Enumerable.Range(0, reader.FieldCount).Select(reader.GetValue)]);
        }

        return [.. rows];
    }
}
