using PartsSignal.Analysis.VanPlan.Loads;

namespace PartsSignal.Analysis.VanPlan;

/// <summary>Freezes the shop as known on a day: no row from that day on has any part in it.</summary>
public sealed class ShopViews
{
    private readonly ShopData _data;
    private readonly VanPlanOptions _options;

    /// <summary>Views over one shop.</summary>
    public ShopViews(ShopData data, VanPlanOptions options)
    {
        (_data, _options) = (data, options);
        Facts = new StockPartFacts(data);
    }

    /// <summary>Prices, suppliers and lead times by day.</summary>
    public StockPartFacts Facts { get; }

    /// <summary>The shop as known before a day.</summary>
    /// <param name="day">First day that is not known.</param>
    /// <param name="asked">Current numbers that are asked for beside those used or counted, or null if there is none.</param>
    public ShopView Before(DateOnly day, IEnumerable<string>? asked = null)
    {
        IReadOnlyDictionary<string, string> numbers = _data.NumbersOn(day.AddDays(-1));
        ShopJob[] told = [.. _data.Jobs.Where(j => j.OpenedOn < day && JobNeeds.Told(j, day) == NeedsKnown.Yes)];
        DateOnly from = day.AddDays(-_options.Demand.HistoryDays);
        string[] used = [.. told.Where(j => j.OpenedOn >= from).SelectMany(j => JobNeeds.Then(j, numbers)).Select(n => n.Number)
            .Concat(_data.Counts.Where(c => (c.CountedOn ?? _data.AsOf) < day).Select(c => numbers.GetValueOrDefault(c.FittedNumber, c.FittedNumber)))
            .Concat(asked ?? [])
            .Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];
        StockPart[] parts = [.. used.Select(n => Facts.On(n, day, _options.LeadDays))];
        var index = used.Select((n, i) => (n, i)).ToDictionary(x => x.n, x => x.i, StringComparer.Ordinal);
        IReadOnlyList<VanLimits> vans = Vans(told, from);
        Dictionary<string, int> van = Index(vans.Select(v => v.Van));
        Dictionary<string, int> types = Index(told.Select(j => j.ApplianceType));
        Dictionary<string, int> families = Index(told.Select(j => j.Family));
        PastJob[] jobs = [.. told.Select(j => new PastJob(
            Of(van, j.Van), j.OpenedOn, Of(types, j.ApplianceType), Of(families, j.Family),
            j.OpenedOn < from ? [] : Needs(JobNeeds.Then(j, numbers), index)))];
        return new ShopView(
            day, vans, parts, jobs, new DemandSizes(vans.Count, types.Count, families.Count, parts.Length),
            new RestockRule(_options.ReviewDays, [.. parts.Select(p => p.LeadDays)]), Kinds(parts, numbers, index, families))
        {
            JobsWithoutNumbers = _data.Jobs.Count(j => j.OpenedOn < day && j.OpenedOn >= from && j.Lines.Count > 0 && JobNeeds.Told(j, day) == NeedsKnown.PartsNotTold),
        };
    }

    /// <summary>Lists carry no day: they are taken as known all along.</summary>
    private PartKinds Kinds(StockPart[] parts, IReadOnlyDictionary<string, string> numbers, Dictionary<string, int> index, Dictionary<string, int> families)
    {
        Dictionary<string, int> components = Index(parts.Select(p => p.Component));
        return new PartKinds(
            [.. parts.Select(p => Of(components, p.Component))],
            [.. _data.Fits.Select(f => (Family: Of(families, f.Family), Part: Of(index, numbers.GetValueOrDefault(f.PartNumber, f.PartNumber))))
                .Where(f => f.Family >= 0 && f.Part >= 0).Distinct()]);
    }

    /// <summary>Numbers as indexes, each once.</summary>
    internal static PartNeed[] Needs(IEnumerable<(string Number, int Quantity)> needs, Dictionary<string, int> index) =>
        [.. needs.GroupBy(n => index[n.Number]).OrderBy(g => g.Key).Select(g => new PartNeed(g.Key, Math.Max(1, g.Sum(n => n.Quantity))))];

    private IReadOnlyList<VanLimits> Vans(ShopJob[] told, DateOnly from) =>
        _options.Vans.Count > 0
            ? _options.Vans
            : [.. told.Where(j => j.OpenedOn >= from && j.Van is not null).Select(j => j.Van!)
                .Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)
                .Select(v => new VanLimits(v, _options.DefaultBudget, _options.DefaultSpace))];

    private static Dictionary<string, int> Index(IEnumerable<string?> names) =>
        names.Where(n => n is not null).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)
            .Select((n, i) => (Name: n!, i)).ToDictionary(x => x.Name, x => x.i, StringComparer.Ordinal);

    private static int Of(Dictionary<string, int> index, string? name) => name is not null && index.TryGetValue(name, out int i) ? i : -1;
}
