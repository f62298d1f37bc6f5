namespace PartsSignal.Analysis.VanPlan;

/// <summary>A part as it could be stocked on a day, with what was known of it then.</summary>
/// <param name="Number">The number current on that day.</param>
/// <param name="Description">Text; null: none.</param>
/// <param name="Component">What it is; null: not known.</param>
/// <param name="Supplier">Who delivered it last, else who lists it; null: not known.</param>
/// <param name="Price">Last price paid, else the list price, else the median of its component or of all parts.</param>
/// <param name="PriceKnown">False: the price is such a median.</param>
/// <param name="SizeClass">Null: not known.</param>
/// <param name="Space">Space units.</param>
/// <param name="ReturnableDays">Null: not known.</param>
/// <param name="LeadDays">Days from order to delivery.</param>
/// <param name="Ended">No longer made: what is aboard may be used up, nothing can be bought.</param>
public sealed record StockPart(
    string Number, string? Description, string? Component, string? Supplier, decimal Price, bool PriceKnown, string? SizeClass,
    double Space, int? ReturnableDays, int LeadDays, bool Ended)
{
    /// <summary>Price in hundredths.</summary>
    public long PriceCents => (long)Math.Round(Price * 100m);
}
