namespace PartsSignal.Pipeline.Understanding;

/// <summary>What the days of the same rows say of each other.</summary>
internal static class DayColumns
{
    private const double NearlyAll = 0.95;
    private const int FewestRows = 3;
    private const int MostDays = 60;

    /// <summary>Whether nearly every row has a day in one column, and another column's days are the same or follow within weeks.</summary>
    /// <param name="every">The column with a day in every row.</param>
    /// <param name="some">The column with a day in some rows.</param>
    public static bool IsShortlyBefore(ColumnSample every, ColumnSample some)
    {
        if (!every.IsDates || every.Filled < NearlyAll * every.Cells.Length)
        {
            return false;
        }

        (int? First, int? Later)[] both = [.. every.Days.Zip(some.Days).Where(d => d.First is not null && d.Second is not null)];
        return both.Length >= FewestRows && both.Count(d => d.First <= d.Later) >= NearlyAll * both.Length && both.Count(d => d.Later - d.First <= MostDays) * 2 > both.Length;
    }
}
