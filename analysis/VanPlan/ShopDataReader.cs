using PartsSignal.Analysis.Sql;

namespace PartsSignal.Analysis.VanPlan;

/// <summary>Reads what a van plan needs from a session over the store.</summary>
public static class ShopDataReader
{
    /// <summary>Reads all of it.</summary>
    /// <param name="database">A session over the store.</param>
    /// <param name="asOf">Last day the data speaks for; null: the newest call.</param>
    /// <param name="group">Vans whose jobs and counts are wanted; null: the whole shop's.</param>
    /// <returns>Null when there is no job and no day was given.</returns>
    public static ShopData? Read(Database database, DateOnly? asOf, VanGroup? group = null)
    {
        if (LogWindow.LastDay(database, asOf) is not { } day)
        {
            return null;
        }

        var numbers = new Dictionary<DateOnly, IReadOnlyDictionary<string, string>>();
        return new ShopData
        {
            AsOf = day,
            Jobs = Jobs(database, group),
            Parts = database.Read("queries/van_plan/shop_parts.sql", r => new ShopPart(
                r.GetString(0), r.GetString(1), r.Text(2), r.Text(3), r.Money(4), r.Text(5), r.Double(6) ?? 1, (int?)r.Long(7), r.Text(8))),
            Orders = database.Read("queries/van_plan/shop_orders.sql", r => new ShopOrder(
                r.GetString(0), r.Day(1)!.Value, r.Day(2), r.GetString(3), r.Int(4), r.Money(5), r.Text(6))),
            Counts = Counts(database, group),
            Aliases = database.Read("queries/van_plan/shop_aliases.sql", r => new ShopAlias(r.GetString(0), r.GetString(1), r.GetString(2))),
            Fits = database.Read("queries/van_plan/shop_fits.sql", r => new ShopFit(r.GetString(0), r.GetString(1))),
            Ended = database.Read("queries/van_plan/shop_ended_parts.sql", r => new EndedPart(r.GetString(0), r.Day(1))),
            NumbersOn = known => numbers.TryGetValue(known, out var found) ? found : numbers[known] = NumbersOn(database, known),
        };
    }

    /// <summary>The same shop with the jobs and counts of other vans.</summary>
    public static ShopData Other(ShopData data, Database database, VanGroup group) =>
        data with { Jobs = Jobs(database, group), Counts = Counts(database, group) };

    private static IReadOnlyList<ShopJob> Jobs(Database database, VanGroup? group)
    {
        ResultTable.Write(database, "plan_vans", (group?.Vans ?? new HashSet<string>()).Select(v => new GroupVan(v)));
        ILookup<string, ShopPartLine> lines = database
            .Read("queries/van_plan/shop_job_parts.sql", r => (Job: r.GetString(0), Line: new ShopPartLine(r.Text(1), r.Text(2), r.Int(3))))
            .ToLookup(l => l.Job, l => l.Line);
        return database.Read("queries/van_plan/shop_jobs.sql", r => new ShopJob(
            r.GetString(0), r.Text(1), r.Day(2)!.Value, r.Day(3), r.Text(4), r.Text(5), r.GetString(6), [.. lines[r.GetString(0)]]));
    }

    private static IReadOnlyList<ShopCount> Counts(Database database, VanGroup? group) =>
        [.. database.Read("queries/van_plan/shop_van_counts.sql", r => new ShopCount(
            r.GetString(0), r.GetString(1), r.GetString(2), r.Int(3), r.Day(4))).Where(c => group?.Vans is not { } vans || vans.Contains(c.Van))];

    private static Dictionary<string, string> NumbersOn(Database database, DateOnly day)
    {
        database.Run("queries/van_plan/arrows_known.sql", ("day", day));
        var numbers = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach ((string old, string current) in database.Read("intermediate/int_current_numbers.sql", r => (r.GetString(0), r.GetString(1))))
        {
            numbers.TryAdd(old, current);
        }

        return numbers;
    }

    private sealed record GroupVan(string Van);
}
