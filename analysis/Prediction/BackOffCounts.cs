namespace PartsSignal.Analysis.Prediction;

/// <summary>Counts of one level, and how strongly it leans on the level above.</summary>
/// <param name="Level">The level.</param>
/// <param name="Alpha">Strength of the parent, in jobs.</param>
/// <param name="Groups">Counts per need, by group key.</param>
public sealed record BackOffCounts(BackOffLevel Level, double Alpha, IReadOnlyDictionary<string, int[]> Groups)
{
    /// <summary>Counts of the call's group, or null if it reaches no group here.</summary>
    public int[]? Find(Call call) =>
        Level.Key(call) is { } key && Groups.TryGetValue(key, out int[]? counts) ? counts : null;

    /// <summary>Counts jobs into groups.</summary>
    /// <param name="level">The level.</param>
    /// <param name="calls">The jobs.</param>
    /// <param name="need">Index of each job's need.</param>
    /// <param name="needs">Number of needs.</param>
    /// <returns>Counts by group key, and the counts of each job's group, or null if the job reaches none.</returns>
    public static (Dictionary<string, int[]> Groups, int[]?[] OfCall) Count(BackOffLevel level, IReadOnlyList<ClosedCall> calls, ReadOnlySpan<int> need, int needs)
    {
        var groups = new Dictionary<string, int[]>(StringComparer.Ordinal);
        var ofCall = new int[]?[calls.Count];
        for (int i = 0; i < calls.Count; i++)
        {
            if (level.Key(calls[i].Call) is not { } key)
            {
                continue;
            }

            if (!groups.TryGetValue(key, out int[]? counts))
            {
                groups[key] = counts = new int[needs];
            }

            counts[need[i]]++;
            ofCall[i] = counts;
        }

        return (groups, ofCall);
    }
}
