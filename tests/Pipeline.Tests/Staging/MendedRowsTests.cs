using PartsSignal.Pipeline.Running;
using PartsSignal.Pipeline.Tests.Transform;

namespace PartsSignal.Pipeline.Tests.Staging;

/// <summary>Which refused rows a mended file stands for.</summary>
public sealed class MendedRowsTests : IDisposable
{
    private const string Name = "mended/list.csv.rejects.csv";
    private const string Header = "Part,Text,Price,reject_line,reject_field,reject_reason,reject_message,reject_suggestion,reject_raw\n";
    private readonly SmallShop _shop = new SmallShop()
        .Write("list.csv", "Part,Text,Price\nA1,Pump,1.50\nA2,Belt,cheap\nA2,Belt,cheap\nA3,Hose,dear\n")
        .Write("shop.json", """{ "sources": [ { "files": "list.csv", "kind": "parts", "columns": { "part": "Part", "description": "Text", "price": "Price" } } ] }""");

    public void Dispose() => _shop.Dispose();

    [Fact]
    public async Task Load_OneOfTwoRowsThatReadTheSameIsMended_TheOtherStaysRefused()
    {
        _shop.Write(Name, Header + "A2,Belt,2.50,4,,,,,\"A2,Belt,cheap\"\n");
        await _shop.Load();
        Assert.Equal(["list.csv|4|1|1|2"], Books());
        Assert.Equal(["3", "5"], _shop.Rows("from rejects select source_line order by 1"));
    }

    [Fact]
    public async Task Load_NewerExportMovedTheLines_AsManyRowsAreReplacedAsWereMended()
    {
        _shop.Write(Name, Header + "A2,Belt,2.50,40,,,,,\"A2,Belt,cheap\"\n");
        await _shop.Load();
        Assert.Equal(["4", "5"], _shop.Rows("from rejects select source_line order by 1"));
        _shop.Write(Name, Header + "A2,Belt,2.50,40,,,,,\"A2,Belt,cheap\"\nA2,Belt,2.60,41,,,,,\"A2,Belt,cheap\"\nA2,Belt,2.60,42,,,,,\"A2,Belt,cheap\"\n");
        await _shop.Load();
        Assert.Equal(["5"], _shop.Rows("from rejects select source_line order by 1"));
    }

    [Fact]
    public async Task Load_MendedFileDoesNotSayHowTheRowRead_ItIsKnownByItsLine()
    {
        _shop.Write(Name, Header + "A3,Hose,9.00,5,,,,,\n");
        await _shop.Load();
        Assert.Equal(["list.csv|4|1|1|2"], Books());
        Assert.Equal(["3", "4"], _shop.Rows("from rejects select source_line order by 1"));
    }

    [Fact]
    public async Task Load_AnotherRowStandsOnTheLineByNow_ItStaysRefused()
    {
        _shop.Write(Name, Header + "B7,Lid,9.00,5,,,,,\n");
        await _shop.Load();
        Assert.Equal(["3", "4", "5"], _shop.Rows("from rejects select source_line order by 1"));
    }

    [Fact]
    public async Task Load_MendedFileCannotBeRead_ItsRowsStayRefused()
    {
        // A link that leads out of the folder is refused.
        _shop.Write("mended/kept.txt", Header + "A3,Hose,9.00,5,,,,,\"A3,Hose,dear\"\n");
        File.CreateSymbolicLink(Path.Combine(_shop.Input, Name), Path.Combine(_shop.Input, "mended", "kept.txt"));
        LoadReport report = await _shop.Load();
        Assert.Single(report.FileErrors);
        Assert.Equal(["list.csv|4|1|0|3"], Books());
    }

    [Fact]
    public async Task Load_MendedFileOfNoSource_IsSaid()
    {
        _shop.Write("mended/old.csv.rejects.csv", Header + "A3,Hose,9.00,5,,,,,\n");
        LoadReport report = await _shop.Load();
        Assert.Contains(
            "Not loaded, since no list in the rejects folder has its name: mended/old.csv.rejects.csv. Save it as CSV under the name of the list that its rows came from, or take it out of 'mended'.",
            report.Assumptions);
        _shop.Write(Name, Header + "A3,Hose,9.00,5,,,,,\n");
        File.Delete(Path.Combine(_shop.Input, "mended", "old.csv.rejects.csv"));
        Assert.DoesNotContain((await _shop.Load()).Assumptions, a => a.Contains("mended", StringComparison.Ordinal));
    }

    private IReadOnlyList<string> Books() =>
        _shop.Rows("from loads select source_file, rows_read, loaded, replaced, rejected where source_file = 'list.csv'");
}
