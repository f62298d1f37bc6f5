namespace PartsSignal.Analysis.Rates;

/// <summary>When a figure is given, and how sure its interval is.</summary>
public sealed record RateOptions
{
    /// <summary>Confidence of every interval, above 0 and below 1. Default 0.95.</summary>
    public double Confidence { get; init; } = 0.95;

    /// <summary>Fewest calls behind a share. Default 10.</summary>
    public int FewestCalls { get; init; } = 10;

    /// <summary>Fewest unit-years behind a rate. Default 10.</summary>
    public double FewestUnitYears { get; init; } = 10;
}
