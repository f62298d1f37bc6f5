namespace PartsSignal.Analysis.Prediction;

/// <summary>
/// Shares by counting, from all jobs down to this model: each level is smoothed towards the one above it, so an unseen
/// model answers with its family, an unseen family with its type. Calibrated by construction, and it explains itself.
/// </summary>
public sealed class BackOffModel : IPredictor
{
    private readonly BackOffCounts[] _levels;

    /// <summary>Puts counted levels together, widest first.</summary>
    public BackOffModel(IReadOnlyList<string> needs, IReadOnlyList<BackOffCounts> levels) =>
        (Needs, _levels) = (needs, [.. levels]);

    /// <inheritdoc/>
    public IReadOnlyList<string> Needs { get; }

    /// <summary>The levels, widest first.</summary>
    public IReadOnlyList<BackOffCounts> Levels => _levels;

    /// <inheritdoc/>
    public double[] Odds(Call call)
    {
        double[] shares = Smoothing.Uniform(Needs.Count);
        foreach (BackOffCounts level in _levels)
        {
            if (level.Find(call) is { } counts)
            {
                shares = Smoothing.Towards(counts, level.Alpha, shares);
            }
        }

        return shares;
    }

    /// <summary>Counts per need of the jobs with a complaint on any type of appliance, or null if there are none.</summary>
    public int[]? OnAnyType(string complaintKind)
    {
        string ending = '\u001f' + complaintKind;
        int[][] groups =
        [
            .. _levels.Where(l => l.Level.Name == BackOffLevel.TypeComplaint)
                .SelectMany(l => l.Groups).Where(g => g.Key.EndsWith(ending, StringComparison.Ordinal)).Select(g => g.Value),
        ];
        return groups.Length == 0 ? null : [.. Enumerable.Range(0, Needs.Count).Select(k => groups.Sum(g => g[k]))];
    }

    /// <summary>Counts behind an answer: per level the call reaches, widest first.</summary>
    public IReadOnlyList<LevelCount> EvidenceFor(Call call) =>
        [.. _levels.Where(l => l.Level.Key(call) is not null).Select(l => new LevelCount(l.Level.Name, l.Find(call) is { } counts ? counts.Sum() : 0))];
}

/// <summary>How many closed jobs stand behind an answer at one level.</summary>
/// <param name="Level">Level name, for example <c>family_complaint</c>.</param>
/// <param name="Jobs">Jobs counted there, 0 or more.</param>
public sealed record LevelCount(string Level, int Jobs);
