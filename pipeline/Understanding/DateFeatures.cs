namespace PartsSignal.Pipeline.Understanding;

/// <summary>How a column of dates stands to the other columns of dates of its table.</summary>
internal static class DateFeatures
{
    /// <summary>Adds the evidence.</summary>
    public static void Add(TableSample table, ColumnSample column, FeatureList list)
    {
        ColumnSample[] others = [.. table.Columns.Where(c => c.IsDates && c != column)];
        bool dates = column.IsDates;
        int?[] days = column.Days;
        int[] sorted = dates ? [.. days.OfType<int>().Order()] : [];
        (double Before, double After, double Same)[] order = dates ? [.. others.Select(o => Order(days, o.Days))] : [];
        list.Count("date_columns", others.Length + (dates ? 1 : 0));
        list.Share("first_of_dates", !dates ? 0 : order.Length == 0 ? 1 : order.Min(o => o.Before + o.Same));
        list.Share("last_of_dates", !dates ? 0 : order.Length == 0 ? 1 : order.Min(o => o.After + o.Same));
        list.Count("dates_before", order.Count(o => o.After > 0.5) + (dates ? 1 : 0));
        list.Count("dates_after", order.Count(o => o.Before > 0.5) + (dates ? 1 : 0));
        list.Share("same_day_as_other", order.Length == 0 ? 0 : order.Max(o => o.Same));
        ColumnSample? start = dates ? Start(table, column) : null;
        int[] gaps = start is null ? [] : [.. Gaps(start.Days, days)];
        list.Gap("days_after_start", gaps.Length == 0 ? null : gaps[gaps.Length / 2]);
        list.Gap("days_after_start_90", gaps.Length == 0 ? null : gaps[(gaps.Length - 1) * 9 / 10]);
        list.Gap("days_after_start_10", gaps.Length == 0 ? null : gaps[gaps.Length / 10]);
        list.Gap("days_to_next", !dates || others.Length == 0 ? null : Next(others, days));
        list.Gap("days_spread", sorted.Length == 0 ? null : sorted[(sorted.Length - 1) * 95 / 100] - sorted[sorted.Length / 20]);
        list.Share("days_distinct", sorted.Length == 0 ? 0 : (double)sorted.Distinct().Count() / sorted.Length);
        list.Share("weekend", sorted.Length == 0 ? 0 : (double)sorted.Count(d => DateOnly.FromDayNumber(d).DayOfWeek is DayOfWeek.Saturday or DayOfWeek.Sunday) / sorted.Length);
        list.Share("first_of_month", sorted.Length == 0 ? 0 : (double)sorted.Count(d => DateOnly.FromDayNumber(d).Day == 1) / sorted.Length);
        list.Share("dates_rising", dates ? RisingDays(days) : 0);
        list.Gap("ends_after_others", !dates || others.Length == 0 ? null : sorted[^1] - others.Max(o => o.Days.OfType<int>().Max()));
        list.Gap("first_to_last_of_all", sorted.Length == 0 ? null : sorted[^1] - sorted[0]);
    }

    /// <summary>The column of dates that most rows begin with.</summary>
    public static ColumnSample? Start(TableSample table, ColumnSample? but = null) => table.Columns
        .Where(c => c.IsDates && c != but && c.Filled * 2 > c.Cells.Length && c.Distinct > 1)
        .OrderBy(c => { int[] d = [.. c.Days.OfType<int>().Order()]; return d[d.Length / 2]; })
        .ThenBy(c => c.Index)
        .FirstOrDefault();

    private static (double Before, double After, double Same) Order(int?[] mine, int?[] other)
    {
        int before = 0, after = 0, same = 0;
        for (int i = 0; i < mine.Length; i++)
        {
            if (mine[i] is { } a && other[i] is { } b)
            {
                before += a < b ? 1 : 0;
                after += a > b ? 1 : 0;
                same += a == b ? 1 : 0;
            }
        }

        double all = Math.Max(1, before + after + same);
        return (before / all, after / all, same / all);
    }

    private static IEnumerable<int> Gaps(int?[] from, int?[] to) =>
        from.Zip(to).Where(p => p.First is not null && p.Second is not null).Select(p => p.Second!.Value - p.First!.Value).Order();

    private static double? Next(ColumnSample[] others, int?[] days)
    {
        double[] after = [.. others.Select(o => Gaps(days, o.Days).ToArray()).Where(g => g.Length > 0).Select(g => (double)g[g.Length / 2]).Where(g => g >= 0)];
        return after.Length == 0 ? null : after.Min();
    }

    private static double RisingDays(int?[] days)
    {
        int[] known = [.. days.OfType<int>()];
        return known.Length < 3 ? 0 : known.Zip(known.Skip(1)).Count(p => p.Second >= p.First) / (double)(known.Length - 1);
    }
}
