namespace PartsSignal.Analysis.Prediction.Contest;

/// <summary>Figures of the test months for one slice of the calls, beside the plain contenders. Null: cannot be computed.</summary>
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
}
