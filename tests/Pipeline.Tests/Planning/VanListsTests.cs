using ExcelDataReader;
using PartsSignal.Analysis.VanPlan;
using PartsSignal.Pipeline.Planning;

namespace PartsSignal.Pipeline.Tests.Planning;

public sealed class VanListsTests : IDisposable
{
    private readonly string _folder = Path.Combine(Path.GetTempPath(), "partssignal-tests", Path.GetRandomFileName());

    static VanListsTests() => System.Text.Encoding.RegisterProvider(System.Text.CodePagesEncodingProvider.Instance);

    [Fact]
    public void Write_TwoSuppliers_GivesAListAndASheetEachAndAPickListPerVan()
    {
        VanLists.Write(_folder, Plan(
            [new OrderLine("First & Co", "F-1", "=A1", "Valve", 2, 10m, 20m, "1 x2"), new OrderLine("[Second]", null, "B1", null, 1, 5m, 5m, "1")],
            [new VanChange("1", ChangeAction.Add, "=A1", null, "Valve", 2, null, null, 20m, "First & Co")]), new DateOnly(2026, 1, 2));
        string[] order = File.ReadAllLines(Path.Combine(_folder, "order-first---co.csv"));
        Assert.Equal("First & Co,F-1,'=A1,Valve,2,10,20,1 x2", order[1]);
        Assert.Equal("1,add,'=A1,,Valve,2,,,First & Co", File.ReadAllLines(Path.Combine(_folder, "pick-van-1.csv"))[1]);
        string book = Path.Combine(_folder, "orders-2026-01-02.xlsx");
        Assert.Equal(["1 First & Co", "2  Second"], Sheets(book).Select(s => s.Name));
        object?[][] rows = Sheets(book)[0].Rows;
        Assert.Equal(["Supplier", "Their number", "Part number", "Description", "Pieces", "Price", "Total", "For vans"], rows[0]);
        Assert.Equal(["First & Co", "F-1", "=A1", "Valve", 2d, 10d, 20d, "1 x2"], rows[1]);
    }

    [Fact]
    public void Write_NothingToOrder_SaysSo()
    {
        VanLists.Write(_folder, Plan([], []), new DateOnly(2026, 1, 9));
        string only = Assert.Single(Directory.GetFiles(_folder));
        Assert.Equal("nothing to order", Assert.Single(Sheets(only)).Name);
    }

    public void Dispose()
    {
        if (Directory.Exists(_folder))
        {
            Directory.Delete(_folder, recursive: true);
        }
    }

    [Fact]
    public void Write_SameOrdersTwice_GivesSameBytes()
    {
        byte[] Book(string folder)
        {
            VanLists.Write(folder, Plan([new OrderLine("First & Co", "F-1", "=A1", "Valve", 2, 10m, 20m, "1 x2")], []), new DateOnly(2026, 1, 2));
            return File.ReadAllBytes(Path.Combine(folder, "orders-2026-01-02.xlsx"));
        }

        Assert.Equal(Book(Path.Combine(_folder, "a")), Book(Path.Combine(_folder, "b")));
    }

    private static List<(string Name, object?[][] Rows)> Sheets(string path)
    {
        using FileStream file = File.OpenRead(path);
        using IExcelDataReader reader = ExcelReaderFactory.CreateOpenXmlReader(file);
        var sheets = new List<(string, object?[][])>();
        do
        {
            var rows = new List<object?[]>();
            while (reader.Read())
            {
                rows.Add([.. Enumerable.Range(0, reader.FieldCount).Select(reader.GetValue)]);
            }

            sheets.Add((reader.Name, [.. rows]));
        }
        while (reader.NextResult());
        return sheets;
    }

    private static ShopPlan Plan(IReadOnlyList<OrderLine> orders, IReadOnlyList<VanChange> changes) => new([], PlanTotals.From([]), [], [], changes, orders, [], [], [], []);
}
