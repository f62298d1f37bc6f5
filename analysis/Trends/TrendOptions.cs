using PartsSignal.Analysis.Statistics.Shrinkage;

namespace PartsSignal.Analysis.Trends;

/// <summary>How trends are looked for.</summary>
public sealed record TrendOptions
{
    /// <summary>What an alarm must pass: q at most 0.10 over everything scanned, ratio at least 1.5, count at least 3.</summary>
    public EffectGate Gate { get; init; } = new();

    /// <summary>Longest baseline, in months.</summary>
    public int BaselineMonths { get; init; } = 36;

    /// <summary>Shortest baseline, in months.</summary>
    public int FewestBaselineMonths { get; init; } = 12;

    /// <summary>Newest months kept out of the baseline, the scanned one among them not counted.</summary>
    public int SkippedMonths { get; init; } = 3;

    /// <summary>Months after which an alarmed month counts as usual: what has gone on for so long is no news.</summary>
    public int FlaggedMonths { get; init; } = 18;

    /// <summary>A series is tested with at least so many expected ...</summary>
    public double FewestExpected { get; init; } = 0.3;

    /// <summary>... or so many seen.</summary>
    public long FewestSeen { get; init; } = 3;

    /// <summary>Events a parent needs for a season of its own.</summary>
    public long FewestForSeason { get; init; } = 50;

    /// <summary>Months over which a slow drift is summed.</summary>
    public int DriftMonths { get; init; } = 12;

    /// <summary>Mean months between false drift alarms of one series.</summary>
    public double DriftRunLength { get; init; } = 4000;
}
