using System.Collections.Concurrent;

namespace PartsSignal.Analysis.VanPlan;

/// <summary>Prices, suppliers and lead times as the order lines told them by a day. Different days may be asked for at the same time.</summary>
public sealed class StockPartFacts
{
    private const int LeadHistoryDays = 365;
    private readonly ShopData _data;
    private readonly Dictionary<string, ShopPart> _catalog;
    private readonly ILookup<string, ShopOrder> _orders;
    private readonly ConcurrentDictionary<DateOnly, Day> _days = [];

    /// <summary>Indexes the shop's rows.</summary>
    public StockPartFacts(ShopData data)
    {
        _data = data;
        _catalog = data.Parts.GroupBy(p => p.Number, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.First(), StringComparer.Ordinal);
        _orders = data.Orders.ToLookup(o => o.PartNumber, StringComparer.Ordinal);
    }

    /// <summary>What was known of a number before a day.</summary>
    /// <param name="number">A catalog number.</param>
    /// <param name="day">Only rows before this day count.</param>
    /// <param name="defaultLeadDays">Lead time where the orders tell none.</param>
    public StockPart On(string number, DateOnly day, int defaultLeadDays)
    {
        Day known = Known(day);
        _catalog.TryGetValue(number, out ShopPart? part);
        ShopOrder? last = LastPriced(part?.CurrentNumber ?? number, day);
        string? supplier = last?.Supplier ?? part?.Supplier;
        decimal? price = last?.UnitCost ?? part?.Price;
        return new StockPart(
            number, part?.Description, part?.Component, supplier,
            price ?? Median(known, part?.Component), price is not null, part?.SizeClass, part?.Space ?? 1, part?.ReturnableDays,
            supplier is not null && known.LeadDays.TryGetValue(supplier, out int lead) ? lead : defaultLeadDays,
            known.Ended.Contains(number));
    }

    private ShopOrder? LastPriced(string number, DateOnly day) =>
        _orders[number].LastOrDefault(o => o.OrderedOn < day && o.UnitCost is not null);

    private Day Known(DateOnly day)
    {
        if (_days.TryGetValue(day, out Day? known))
        {
            return known;
        }

        DateOnly from = day.AddDays(-LeadHistoryDays);
        var leads = _data.Orders
            .Where(o => o.OrderedOn >= from && o.ReceivedOn is { } received && received < day && received >= o.OrderedOn)
            .GroupBy(o => o.Supplier, o => o.ReceivedOn!.Value.DayNumber - o.OrderedOn.DayNumber, StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => Middle([.. g.Order()]), StringComparer.Ordinal);
        var ended = _data.Ended.Where(e => e.EffectiveOn is not { } since || since < day).Select(e => e.Number).ToHashSet(StringComparer.Ordinal);
        return _days[day] = new Day(leads, ended);
    }

    private decimal Median(Day known, string? component)
    {
        if (known.Medians.TryGetValue(component ?? "", out decimal median))
        {
            return median;
        }

        decimal[] prices = [.. _data.Parts.Where(p => p.Price is not null && p.Component == component).Select(p => p.Price!.Value).Order()];
        prices = prices.Length > 0 ? prices : [.. _data.Parts.Where(p => p.Price is not null).Select(p => p.Price!.Value).Order()];
        return known.Medians[component ?? ""] = prices.Length > 0 ? Middle(prices) : 0m;
    }

    private static T Middle<T>(T[] sorted) => sorted[(sorted.Length - 1) / 2];

    private sealed record Day(Dictionary<string, int> LeadDays, HashSet<string> Ended)
    {
        public Dictionary<string, decimal> Medians { get; } = new(StringComparer.Ordinal);
    }
}

/// <summary>A part as it could be stocked on a day, with what was known of it then.</summary>
/// <param name="Number">The number current on that day.</param>
/// <param name="Description">Text, or null if there is none.</param>
/// <param name="Component">What it is, or null if not known.</param>
/// <param name="Supplier">Who delivered it last, else who lists it, or null if not known.</param>
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

/// <summary>What is known of the parts beside their use.</summary>
/// <param name="Component">Index of each part's component; -1: not known.</param>
/// <param name="Listed">Families and parts a list says fit each other, as indexes.</param>
public sealed record PartKinds(IReadOnlyList<int> Component, IReadOnlyList<(int Family, int Part)> Listed)
{
    /// <summary>Nothing known of so many parts.</summary>
    public static PartKinds Unknown(int parts) => new([.. Enumerable.Repeat(-1, parts)], []);
}
