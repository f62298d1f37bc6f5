namespace PartsSignal.Analysis.Prediction;

/// <summary>The needs of a set of jobs, and where each job's need stands among them.</summary>
internal static class NeedList
{
    /// <summary>All needs seen, in ordinal order.</summary>
    public static string[] From(IReadOnlyList<ClosedCall> calls) =>
        [.. calls.Select(c => c.Need).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];

    /// <summary>Position of each job's need; -1: not in the list.</summary>
    public static int[] Index(IReadOnlyList<string> needs, IReadOnlyList<ClosedCall> calls)
    {
        Dictionary<string, int> places = Places(needs);
        return [.. calls.Select(c => places.GetValueOrDefault(c.Need, -1))];
    }

    /// <summary>Position by need.</summary>
    public static Dictionary<string, int> Places(IReadOnlyList<string> needs)
    {
        var places = new Dictionary<string, int>(StringComparer.Ordinal);
        for (int k = 0; k < needs.Count; k++)
        {
            places[needs[k]] = k;
        }

        return places;
    }
}
