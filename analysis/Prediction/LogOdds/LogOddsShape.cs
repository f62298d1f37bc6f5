namespace PartsSignal.Analysis.Prediction.LogOdds;

/// <summary>What a table of log odds is about: needs, facts, words, and the needs each appliance type can have.</summary>
public sealed class LogOddsShape
{
    /// <summary>Fewest jobs for a word to count.</summary>
    public const int LeastWordJobs = 6;

    /// <summary>Most words kept.</summary>
    public const int MostWords = 500;

    private const string SharedMark = "/any";

    private readonly int[] _all;
    private readonly IReadOnlyDictionary<string, int[]> _allowed;

    /// <summary>Puts a shape together.</summary>
    public LogOddsShape(IReadOnlyList<string> needs, FeatureSpace space, LearnedComplaintReader kinds, IReadOnlyDictionary<string, int[]> allowed)
    {
        (Needs, Space, Kinds, _allowed) = (needs, space, kinds, allowed);
        Places = NeedList.Places(needs);
        _all = [.. Enumerable.Range(0, needs.Count)];
    }

    /// <summary>The needs, in ordinal order.</summary>
    public IReadOnlyList<string> Needs { get; }

    /// <summary>Place of each need.</summary>
    public IReadOnlyDictionary<string, int> Places { get; }

    /// <summary>The facts.</summary>
    public FeatureSpace Space { get; }

    /// <summary>Second reading of complaints, and the words that count.</summary>
    public LearnedComplaintReader Kinds { get; }

    /// <summary>Needs seen on each appliance type.</summary>
    public IReadOnlyDictionary<string, int[]> Allowed => _allowed;

    /// <summary>Needs a type can have; every need for a type never seen.</summary>
    public int[] AllowedFor(string applianceType) => _allowed.GetValueOrDefault(applianceType, _all);

    /// <summary>Name of the weight that all needs share for a fact about one need.</summary>
    public static string Shared(string key) => key + SharedMark;

    /// <summary>True for the name of such a weight.</summary>
    public static bool IsShared(string key) => key.EndsWith(SharedMark, StringComparison.Ordinal);

    /// <summary>The shape of a set of jobs, without facts yet.</summary>
    /// <param name="calls">The jobs.</param>
    /// <param name="kinds">A second reading learned earlier, or null to learn it here.</param>
    public static LogOddsShape From(IReadOnlyList<ClosedCall> calls, LearnedComplaintReader? kinds = null)
    {
        string[] needs = NeedList.From(calls);
        Dictionary<string, int> places = NeedList.Places(needs);
        var allowed = calls.GroupBy(c => c.Call.ApplianceType, StringComparer.Ordinal).ToDictionary(
            g => g.Key, g => g.Select(c => places[c.Need]).Distinct().Order().ToArray(), StringComparer.Ordinal);
        return new LogOddsShape(needs, new FeatureSpace(), kinds ?? LearnedComplaintReader.Learn(calls, ComplaintWords.Vocabulary(calls, LeastWordJobs, MostWords)), allowed);
    }
}
