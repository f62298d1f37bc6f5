namespace PartsSignal.Pipeline.Understanding;

/// <summary>
/// Two columns of days whose headers say one order and whose cells say the other: "compl" may be the complaint or the
/// completion. No job is finished before it is called in, so the cells decide.
/// </summary>
internal static class DayOrder
{
    private const double NearlyAll = 0.95;
    private const double Enough = 0.1;
    private static readonly (string Earlier, string Later)[] Pairs = [("opened_on", "closed_on"), ("ordered_on", "received_on"), ("made_on", "installed_on")];

    /// <summary>The choice with the columns of a pair exchanged where their days run backwards.</summary>
    /// <param name="choice">Which column gives which field.</param>
    /// <param name="table">The table.</param>
    /// <param name="settled">Log odds that only an answer of a person has.</param>
    public static FieldChoice Mended(FieldChoice choice, TableSample table, double settled)
    {
        int[] columns = [.. choice.Columns];
        foreach ((string earlier, string later) in Pairs)
        {
            int from = ((IList<string>)choice.Fields).IndexOf(earlier), to = ((IList<string>)choice.Fields).IndexOf(later);
            if (from >= 0 && to >= 0 && columns[from] >= 0 && columns[to] >= 0
                && choice.Odds[columns[from], from] < settled && choice.Odds[columns[to], to] < settled
                && RunBackwards(table.Columns[columns[from]], table.Columns[columns[to]]))
            {
                (columns[from], columns[to]) = (columns[to], columns[from]);
            }
        }

        return choice with { Columns = columns };
    }

    private static bool RunBackwards(ColumnSample earlier, ColumnSample later)
    {
        int[] gaps = [.. earlier.Days.Zip(later.Days).Where(p => p.First is not null && p.Second is not null).Select(p => p.Second!.Value - p.First!.Value)];
        int backwards = gaps.Count(g => g < 0), forwards = gaps.Count(g => g > 0);
        return backwards >= Math.Max(2, Enough * gaps.Length) && backwards >= NearlyAll * (backwards + forwards);
    }
}
