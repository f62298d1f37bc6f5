using PartsSignal.Analysis.Sql;

namespace PartsSignal.Analysis.VanPlan;

/// <summary>
/// Vans that are planned together: they share what their jobs tell of the demand, and pieces move among them. A small
/// shop is one group. A large one is cut, by the vans' names, so that time grows with the vans and memory not at all.
/// </summary>
/// <param name="Vans">Its vans by name, or null for the whole shop, jobs of no van included.</param>
public sealed record VanGroup(IReadOnlySet<string>? Vans)
{
    /// <summary>Most vans of a group: enough for a steady common demand.</summary>
    public const int MostVans = 50;

    /// <summary>The groups of a shop, by name; a shop without vans is one group.</summary>
    /// <param name="database">A session over the store.</param>
    /// <param name="asOf">Last day the data speaks for, or null for the day of the newest call.</param>
    /// <param name="options">Vans that are listed there are all vans; else those of the history window are.</param>
    /// <param name="most">Most vans of a group.</param>
    public static IReadOnlyList<VanGroup> Create(Database database, DateOnly? asOf, VanPlanOptions options, int most = MostVans)
    {
        IReadOnlyList<string> names = options.Vans.Count > 0
            ? [.. options.Vans.Select(v => v.Van).Order(StringComparer.Ordinal)]
            : database.Read<string>("queries/van_plan/shop_vans.sql", ("last_day", LogWindow.LastDay(database, asOf)), ("days", options.Demand.HistoryDays));
        return names.Count <= most ? [new VanGroup((IReadOnlySet<string>?)null)]
            : [.. names.Chunk(most).Select(chunk => new VanGroup(chunk.ToHashSet(StringComparer.Ordinal)))];
    }

    /// <summary>How its vans are planned.</summary>
    public VanPlanOptions Options(VanPlanOptions shop) => Vans is null ? shop : shop with
    {
        Vans = shop.Vans.Count > 0
            ? [.. shop.Vans.Where(v => Vans.Contains(v.Van))]
            : [.. Vans.Order(StringComparer.Ordinal).Select(v => new VanLimits(v, shop.DefaultBudget, shop.DefaultSpace))],
    };
}
