using PartsSignal.Analysis.Sql;

namespace PartsSignal.Analysis.VanPlan;

/// <summary>Reads what a van plan needs from a session over the store.</summary>
public static class ShopDataReader
{
    /// <summary>Reads all of it.</summary>
    /// <param name="database">A session over the store.</param>
    /// <param name="asOf">Last day the data speaks for, or null for the day of the newest call.</param>
    /// <param name="group">Vans whose jobs and counts are wanted, or null for the whole shop.</param>
    /// <returns>Null when there is no job and no day was given.</returns>
    public static ShopData? Read(Database database, DateOnly? asOf, VanGroup? group = null)
    {
        if (LogWindow.LastDay(database, asOf) is not { } day)
        {
            return null;
        }

        database.Run("macros/told_part_lines.sql");
        var numbers = new Dictionary<DateOnly, IReadOnlyDictionary<string, string>>();
        return new ShopData
        {
            AsOf = day,
            Jobs = Jobs(database, group),
            LastUses = database.Read<ShopLastUse>("queries/van_plan/shop_last_uses.sql", ("last_day", day)),
            Parts = database.Read<ShopPart>("queries/van_plan/shop_parts.sql"),
            Orders = database.Read<ShopOrder>("queries/van_plan/shop_orders.sql"),
            Counts = Counts(database, group),
            Shelf = database.Read<ShelfPart>("queries/van_plan/shop_shelf.sql"),
            Aliases = database.Read<ShopAlias>("queries/van_plan/shop_aliases.sql"),
            Fits = database.Read<ShopFit>("queries/van_plan/shop_fits.sql"),
            Ended = database.Read<EndedPart>("queries/van_plan/shop_ended_parts.sql"),
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
            .Read<JobPart>("queries/van_plan/shop_job_parts.sql")
            .ToLookup(l => l.JobId, l => l.Line);
        return [.. database.Read<JobRow>("queries/van_plan/shop_jobs.sql").Select(j => new ShopJob(
            j.JobId, j.Van, j.OpenedOn, j.ClosedOn, j.ApplianceType, j.ModelFamily, j.Outcome, [.. lines[j.JobId]]))];
    }

    private static IReadOnlyList<ShopCount> Counts(Database database, VanGroup? group) =>
        [.. database.Read<ShopCount>("queries/van_plan/shop_van_counts.sql").Where(c => group?.Vans is not { } vans || vans.Contains(c.Van))];

    private static Dictionary<string, string> NumbersOn(Database database, DateOnly day)
    {
        database.Run("queries/van_plan/arrows_known.sql", ("day", day));
        var numbers = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach ((string old, string current) in database.Read<CurrentNumber>("intermediate/int_current_numbers.sql"))
        {
            numbers.TryAdd(old, current);
        }

        return numbers;
    }

    private sealed record GroupVan(string Van);

    private sealed record JobPart(string JobId, ShopPartLine Line);

    private sealed record JobRow(
        string JobId, string? Van, DateOnly OpenedOn, DateOnly? ClosedOn, string? ApplianceType, string? ModelFamily, string Outcome);

    private sealed record CurrentNumber(string OldNumber, [Column("current_number")] string Current);
}
