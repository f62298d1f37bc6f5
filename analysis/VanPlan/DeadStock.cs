namespace PartsSignal.Analysis.VanPlan;

/// <summary>Pieces counted on a van whose part no job of the shop used for a year.</summary>
/// <param name="Van">The van.</param>
/// <param name="PartNumber">Current number.</param>
/// <param name="Description">Text, or null if there is none.</param>
/// <param name="Quantity">Pieces, 1 or more.</param>
/// <param name="Money">Their price.</param>
/// <param name="PriceKnown">False: the price is the median of its component.</param>
/// <param name="LastUsedOn">Day of the last visit that used one, or null: never in the log.</param>
/// <param name="LastBoughtOn">Day one was last ordered, or null if not known.</param>
/// <param name="DaysUnused">Days since the later of the two: how long it has been lying for sure; null: neither is known.</param>
public sealed record DeadStock(
    string Van, string PartNumber, string? Description, int Quantity, decimal Money, bool PriceKnown, DateOnly? LastUsedOn, DateOnly? LastBoughtOn, int? DaysUnused)
{
    /// <summary>Days without use after which a part counts as dead.</summary>
    public const int UnusedDays = 365;

    /// <summary>All of it, by van, the most money first. A part bought within the year is not dead yet.</summary>
    public static IReadOnlyList<DeadStock> Find(ShopData data, StockPartFacts facts, VanPlanOptions options)
    {
        var used = data.LastUses.ToDictionary(u => u.PartNumber, u => u.LastUsedOn, StringComparer.Ordinal);
        var bought = data.Orders.Where(o => o.OrderedOn <= data.AsOf)
            .GroupBy(o => o.PartNumber, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.Max(o => o.OrderedOn), StringComparer.Ordinal);
        DateOnly since = data.AsOf.AddDays(-UnusedDays);
        return
        [
            .. data.Counts.GroupBy(c => (c.Van, c.PartNumber)).Select(g => Row(g.Key.Van, g.Key.PartNumber, g.Sum(c => c.OnHand)))
                .Where(d => !(d.LastUsedOn > since) && !(d.LastBoughtOn > since))
                .OrderBy(d => d.Van, StringComparer.Ordinal).ThenByDescending(d => d.Money).ThenBy(d => d.PartNumber, StringComparer.Ordinal),
        ];

        DeadStock Row(string van, string number, int pieces)
        {
            DateOnly? lastUse = used.TryGetValue(number, out DateOnly u) ? u : null, lastOrder = bought.TryGetValue(number, out DateOnly b) ? b : null;
            DateOnly? last = lastUse is null || lastOrder > lastUse ? lastOrder : lastUse;
            StockPart part = facts.On(number, data.AsOf.AddDays(1), options.LeadDays);
            return new DeadStock(van, number, part.Description, pieces, pieces * part.Price, part.PriceKnown, lastUse, lastOrder, last is { } day ? data.AsOf.DayNumber - day.DayNumber : null);
        }
    }
}
