using MiniExcelLibs;
using PartsSignal.Analysis.VanPlan;
using PartsSignal.Pipeline.Planning;

namespace PartsSignal.Pipeline.Tests.Planning;

public sealed class VanListsTests : IDisposable
{
    private readonly string _folder = Path.Combine(Path.GetTempPath(), "partssignal-tests", Path.GetRandomFileName());

    [Fact]
    public void Write_TwoSuppliers_GivesAListAndASheetEachAndAPickListPerVan()
    {
        VanLists.Write(_folder, Plan(
            [new OrderLine("First & Co", "F-1", "=A1", "Valve", 2, 10m, 20m, "1 x2"), new OrderLine("[Second]", null, "B1", null, 1, 5m, 5m, "1")],
            [new VanChange("1", ChangeAction.Add, "=A1", null, "Valve", 2, null, null, 20m, "First & Co")]), new DateOnly(2026, 1, 2));
        string[] order = File.ReadAllLines(Path.Combine(_folder, "order-first---co.csv"));
        Assert.Equal("First & Co,F-1,'=A1,Valve,2,10,20,1 x2", order[1]);
        Assert.Equal("add,'=A1,,Valve,2,,,First & Co", File.ReadAllLines(Path.Combine(_folder, "pick-van-1.csv"))[1]);
        string book = Path.Combine(_folder, "orders-2026-01-02.xlsx");
        Assert.Equal(2, MiniExcel.GetSheetNames(book).Count);
        var row = (IDictionary<string, object>)MiniExcel.Query(book, useHeaderRow: true).First();
        Assert.Equal("=A1", row["Part number"]);
    }

    [Fact]
    public void Write_NothingToOrder_SaysSo()
    {
        VanLists.Write(_folder, Plan([], []), new DateOnly(2026, 1, 9));
        string only = Assert.Single(Directory.GetFiles(_folder));
        Assert.Equal("nothing to order", Assert.Single(MiniExcel.GetSheetNames(only)));
    }

    public void Dispose()
    {
        if (Directory.Exists(_folder))
        {
            Directory.Delete(_folder, recursive: true);
        }
    }

    private static ShopPlan Plan(IReadOnlyList<OrderLine> orders, IReadOnlyList<VanChange> changes) => new([], PlanTotals.From([]), [], [], changes, orders, [], [], [], []);
}
