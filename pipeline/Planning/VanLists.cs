using System.Globalization;
using MiniExcelLibs;
using PartsSignal.Analysis.VanPlan;
using PartsSignal.Pipeline.Core;

namespace PartsSignal.Pipeline.Planning;

/// <summary>Order lists per supplier (CSV and a workbook with a sheet each) and pick lists per van.</summary>
internal static class VanLists
{
    private static readonly IReadOnlyList<TableColumn<OrderLine>> OrderColumns =
    [
        new("supplier", "Supplier", o => o.Supplier),
        new("supplier_number", "Their number", o => o.SupplierNumber),
        new("part_number", "Part number", o => o.PartNumber),
        new("description", "Description", o => o.Description),
        new("quantity", "Pieces", o => o.Quantity),
        new("unit_price", "Price", o => o.UnitPrice),
        new("total", "Total", o => o.Total),
        new("for_vans", "For vans", o => o.ForVans),
    ];

    private static readonly IReadOnlyList<TableColumn<VanChange>> PickColumns =
    [
        new("action", "Do", c => ChangeText.Action(c.Action)),
        new("part_number", "Part number", c => c.PartNumber),
        new("label", "Label", c => c.Label),
        new("description", "Description", c => c.Description),
        new("quantity", "Pieces", c => c.Quantity),
        new("other_van", "Other van", c => c.OtherVan),
        new("by", "By", c => c.By),
        new("supplier", "Supplier", c => c.Supplier),
    ];

    /// <summary>Writes all lists to an empty folder.</summary>
    public static void Write(string folder, ShopPlan plan, DateOnly asOf)
    {
        Directory.CreateDirectory(folder);
        foreach (var supplier in plan.Orders.GroupBy(o => FileName(o.Supplier)))
        {
            Csv(Path.Combine(folder, $"order-{supplier.Key}.csv"), [.. supplier], OrderColumns);
        }

        foreach (var van in plan.Changes.GroupBy(c => FileName(c.Van)))
        {
            Csv(Path.Combine(folder, $"pick-van-{van.Key}.csv"), [.. van], PickColumns);
        }

        Workbook(Path.Combine(folder, string.Create(CultureInfo.InvariantCulture, $"orders-{asOf:yyyy-MM-dd}.xlsx")), plan.Orders);
    }

    private static void Csv<T>(string path, IReadOnlyList<T> rows, IReadOnlyList<TableColumn<T>> columns)
    {
        using var file = new StreamWriter(path) { NewLine = "\n" };
        TablePrinter.Print(file, OutputFormat.Csv, rows, columns);
    }

    private static void Workbook(string path, IReadOnlyList<OrderLine> orders)
    {
        var sheets = new Dictionary<string, object>();
        foreach (var supplier in orders.GroupBy(o => o.Supplier))
        {
            sheets[SheetName(supplier.Key, sheets.Count + 1)] = supplier.Select(Cells).ToList();
        }

        if (sheets.Count == 0)
        {
            sheets["nothing to order"] = new List<Dictionary<string, object?>> { new() { ["Answer"] = "Nothing to order: every van has what its plan asks for." } };
        }

        MiniExcel.SaveAs(path, sheets);
    }

    private static Dictionary<string, object?> Cells(OrderLine line) => OrderColumns.ToDictionary(c => c.Head, c => c.Value(line));

    private static string FileName(string text) =>
        string.Concat(text.ToLowerInvariant().Select(c => char.IsAsciiLetterOrDigit(c) ? c : '-')).Trim('-') is { Length: > 0 } name ? name : "unnamed";

    /// <summary>A workbook's sheet name holds at most 31 characters and none of : \ / ? * [ ].</summary>
    private static string SheetName(string supplier, int number)
    {
        string clean = string.Concat(supplier.Select(c => ":\\/?*[]'".Contains(c, StringComparison.Ordinal) ? ' ' : c)).Trim();
        return string.Create(CultureInfo.InvariantCulture, $"{number} {clean[..Math.Min(clean.Length, 27)]}");
    }
}
