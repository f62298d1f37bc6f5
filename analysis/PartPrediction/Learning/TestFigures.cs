using PartsSignal.Analysis.PartPrediction.Contest;
using PartsSignal.Analysis.PartPrediction.Judging;

namespace PartsSignal.Analysis.PartPrediction.Learning;

/// <summary>Figures of the test months for one slice of the calls, beside the two plain contenders. Null: cannot be computed.</summary>
public sealed record TestFigures
{
    /// <summary>Figures of the shipped predictor.</summary>
    public required Scores Shipped { get; init; }

    /// <summary>Figures of the tally by complaint.</summary>
    public required Scores ComplaintOnly { get; init; }

    /// <summary>Figures of the tally by complaint and type of appliance.</summary>
    public required Scores ComplaintOnType { get; init; }

    /// <summary>Figures of the back-off.</summary>
    public required Scores BackOff { get; init; }

    /// <summary>Share of calls whose 80 % set held the need.</summary>
    public required double? Coverage80 { get; init; }

    /// <summary>Share of calls whose 95 % set held the need.</summary>
    public required double? Coverage95 { get; init; }

    /// <summary>Mean log loss of the best possible odds; only for a fictional shop.</summary>
    public required double? BestPossible { get; init; }

    /// <summary>The same figures against what was really at fault; only for a fictional shop.</summary>
    public required TrueFigures? AgainstTruth { get; init; }

    /// <summary>Share of the way from the tally by complaint to the best possible odds.</summary>
    public double? GapClosed => GapShare(ComplaintOnly.LogLoss, Shipped.LogLoss, BestPossible);

    /// <summary>(plain - ours) / (plain - best); null where either end is missing or they do not differ.</summary>
    public static double? GapShare(double? plain, double? ours, double? best) =>
        plain is { } p && ours is { } o && best is { } b && p - b > 1e-9 ? (p - o) / (p - b) : null;
}

/// <summary>Log losses against what was really at fault.</summary>
public sealed record TrueFigures(int Jobs, double? Shipped, double? ComplaintOnly, double? BestPossible)
{
    /// <summary>Share of the way from the tally by complaint to the best possible odds.</summary>
    public double? GapClosed => TestFigures.GapShare(ComplaintOnly, Shipped, BestPossible);
}
