using System.Globalization;
using PartsSignal.Analysis.VanPlan;
using PartsSignal.Pipeline.Core;
using PartsSignal.Reports.Components;
using PartsSignal.Reports.Workbook;

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
        new("van", "Van", c => c.Van),
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
        string[] heads = [.. OrderColumns.Select(c => c.Head)];
        WorkbookSheet[] sheets = [.. orders.GroupBy(o => o.Supplier).Select((supplier, i) => new WorkbookSheet(
            string.Create(CultureInfo.InvariantCulture, $"{i + 1} {supplier.Key}"), heads,
            [.. supplier.Select(o => (IReadOnlyList<WorkbookCell>)[.. OrderColumns.Select(c => Cell(c.Value(o)))])]))];
        var nothing = new WorkbookSheet("nothing to order", ["Answer"], [[Cell("Nothing to order: every van has what its plan asks for.")]]);
        using FileStream file = File.Create(path);
        WorkbookWriter.Write(file, sheets.Length > 0 ? sheets : [nothing]);
    }

    private static WorkbookCell Cell(object? value) => new(value, value is decimal ? CellKind.Money : value is int ? CellKind.Count : CellKind.Text);

    private static string FileName(string text) =>
        string.Concat(text.ToLowerInvariant().Select(c => char.IsAsciiLetterOrDigit(c) ? c : '-')).Trim('-') is { Length: > 0 } name ? name : "unnamed";
}

/// <summary>The wording of a plan's changes.</summary>
internal static class ChangeText
{
    public static string Action(ChangeAction action) => action switch
    {
        ChangeAction.Keep => "keep",
        ChangeAction.Replace => "use up, then replace",
        ChangeAction.Add => "add",
        ChangeAction.MoveOut => "move to",
        ChangeAction.MoveIn => "move from",
        ChangeAction.SendBack => "send back",
        _ => "take off",
    };
}
