namespace PartsSignal.Analysis.Prediction.Contest;

/// <summary>How contenders are judged.</summary>
public sealed record ContestOptions
{
    /// <summary>Months whose figures are published; never used for a choice. Default 12.</summary>
    public int TestMonths { get; init; } = 12;

    /// <summary>Months the choice is made on. Default 6.</summary>
    public int ValidationMonths { get; init; } = 6;

    /// <summary>Months between learning and validation on which temperatures are found. Default 3.</summary>
    public int CalibrationMonths { get; init; } = 3;

    /// <summary>Months between two trainings while the shipped contender walks through the test months. Default 3.</summary>
    public int FoldMonths { get; init; } = 3;

    /// <summary>Fewest closed jobs before the first validation month for a contest; below, the back-off ships unjudged. Default 150.</summary>
    public int LeastJobs { get; init; } = 150;

    /// <summary>Seed of the bootstrap.</summary>
    public int Seed { get; init; } = 20240229;
}
