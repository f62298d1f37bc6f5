namespace PartsSignal.Analysis.Statistics;

/// <summary>A row of the input that cannot be used, and why.</summary>
/// <param name="Row">Its place in the input, from 0.</param>
/// <param name="Reason">What is wrong with it.</param>
public sealed record BadRow(int Row, string Reason)
{
    /// <summary>Splits rows into those without a fault, in the order given, and the others.</summary>
    internal static (IReadOnlyList<T> Good, IReadOnlyList<BadRow> Bad) Split<T>(IReadOnlyList<T> rows, Func<T, string?> fault)
    {
        var good = new List<T>(rows.Count);
        var bad = new List<BadRow>();
        for (int i = 0; i < rows.Count; i++)
        {
            if (fault(rows[i]) is { } reason)
            {
                bad.Add(new BadRow(i, reason));
            }
            else
            {
                good.Add(rows[i]);
            }
        }

        return (good, bad);
    }
}
