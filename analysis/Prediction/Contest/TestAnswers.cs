namespace PartsSignal.Analysis.Prediction.Contest;

/// <summary>The test months as four predictors answered them, job by job in the same order.</summary>
/// <param name="Shipped">The shipped contender.</param>
/// <param name="ComplaintOnly">The tally by complaint.</param>
/// <param name="ComplaintOnType">The tally by complaint and type of appliance.</param>
/// <param name="BackOff">The back-off.</param>
public sealed record TestAnswers(
    IReadOnlyList<WalkedForecast> Shipped, IReadOnlyList<WalkedForecast> ComplaintOnly,
    IReadOnlyList<WalkedForecast> ComplaintOnType, IReadOnlyList<WalkedForecast> BackOff)
{
    /// <summary>Test calls asked again with something held back, by the slice's name.</summary>
    public IReadOnlyDictionary<string, TestAnswers> Slices { get; init; } = new Dictionary<string, TestAnswers>();

    /// <summary>The answers to some of the calls.</summary>
    public TestAnswers Where(Func<Forecast, bool> wanted) =>
        new(Some(Shipped, wanted), Some(ComplaintOnly, wanted), Some(ComplaintOnType, wanted), Some(BackOff, wanted));

    /// <summary>Figures over these calls.</summary>
    public TestFigures Judge() => new()
    {
        Shipped = Scores.From(Forecasts(Shipped)),
        ComplaintOnly = Scores.From(Forecasts(ComplaintOnly)),
        ComplaintOnType = Scores.From(Forecasts(ComplaintOnType)),
        BackOff = Scores.From(Forecasts(BackOff)),
        Coverage80 = Share(f => f.Covered80),
        Coverage95 = Share(f => f.Covered95),
    };

    /// <summary>Plain forecasts of a walk.</summary>
    public static IReadOnlyList<Forecast> Forecasts(IReadOnlyList<WalkedForecast> walked) => [.. walked.Select(w => w.Forecast)];

    private double? Share(Func<WalkedForecast, bool> covered) => Shipped.Count == 0 ? null : Shipped.Average(f => covered(f) ? 1.0 : 0.0);

    private static IReadOnlyList<WalkedForecast> Some(IReadOnlyList<WalkedForecast> all, Func<Forecast, bool> wanted) =>
        [.. all.Where(w => wanted(w.Forecast))];
}
