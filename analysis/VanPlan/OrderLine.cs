namespace PartsSignal.Analysis.VanPlan;

/// <summary>A line of an order list.</summary>
/// <param name="Supplier">Supplier; "not known" where nobody ever delivered or lists the part.</param>
/// <param name="SupplierNumber">The supplier's own number, or null if none is known.</param>
/// <param name="PartNumber">Current number.</param>
/// <param name="Description">Text, or null if there is none.</param>
/// <param name="Quantity">Pieces for all vans.</param>
/// <param name="UnitPrice">Price of a piece.</param>
/// <param name="Total">Price of the line.</param>
/// <param name="ForVans">Vans and pieces, for example 1 x2, 3.</param>
public sealed record OrderLine(
    string Supplier, string? SupplierNumber, string PartNumber, string? Description, int Quantity, decimal UnitPrice, decimal Total, string ForVans)
{
    /// <summary>What all vans need bought, by supplier and part.</summary>
    public static IReadOnlyList<OrderLine> From(IReadOnlyList<VanChange> changes, ShopData data)
    {
        Dictionary<(string, string), string> aliases = data.Aliases.ToDictionary(a => (a.Supplier, a.PartNumber), a => a.Alias);
        return [.. changes
            .Where(c => c.Action == ChangeAction.Add)
            .GroupBy(c => (Supplier: c.Supplier ?? "not known", c.PartNumber))
            .OrderBy(g => g.Key.Supplier, StringComparer.Ordinal).ThenBy(g => g.Key.PartNumber, StringComparer.Ordinal)
            .Select(g => new OrderLine(
                g.Key.Supplier, aliases.GetValueOrDefault(g.Key), g.Key.PartNumber, g.First().Description, g.Sum(c => c.Quantity),
                g.First().Money / g.First().Quantity, g.Sum(c => c.Money),
                string.Join(", ", g.Select(c => c.Quantity == 1 ? c.Van : $"{c.Van} x{c.Quantity}"))))];
    }
}
