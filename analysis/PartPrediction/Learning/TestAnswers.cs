using PartsSignal.Analysis.PartPrediction.Contest;
using PartsSignal.Analysis.PartPrediction.Judging;

namespace PartsSignal.Analysis.PartPrediction.Learning;

/// <summary>The test months as three predictors answered them, job by job in the same order.</summary>
/// <param name="Shipped">The shipped contender.</param>
/// <param name="ComplaintOnly">The tally by complaint.</param>
/// <param name="ComplaintOnType">The tally by complaint and type of appliance.</param>
/// <param name="BackOff">The back-off.</param>
public sealed record TestAnswers(
    IReadOnlyList<WalkedForecast> Shipped, IReadOnlyList<WalkedForecast> ComplaintOnly,
    IReadOnlyList<WalkedForecast> ComplaintOnType, IReadOnlyList<WalkedForecast> BackOff)
{
    /// <summary>The answers to some of the calls.</summary>
    public TestAnswers Where(Func<Forecast, bool> wanted) =>
        new(Some(Shipped, wanted), Some(ComplaintOnly, wanted), Some(ComplaintOnType, wanted), Some(BackOff, wanted));

    /// <summary>Figures over these calls.</summary>
    /// <param name="truths">What the maker of a fictional shop knows, by job; empty for a real one.</param>
    public TestFigures Judge(IReadOnlyDictionary<string, JobTruth> truths) => new()
    {
        Shipped = Scores.Of(Forecasts(Shipped)),
        ComplaintOnly = Scores.Of(Forecasts(ComplaintOnly)),
        ComplaintOnType = Scores.Of(Forecasts(ComplaintOnType)),
        BackOff = Scores.Of(Forecasts(BackOff)),
        Coverage80 = Share(f => f.Covered80),
        Coverage95 = Share(f => f.Covered95),
        BestPossible = BestPossible(truths),
        AgainstTruth = AgainstTruth(truths),
    };

    /// <summary>Plain forecasts of a walk.</summary>
    public static IReadOnlyList<Forecast> Forecasts(IReadOnlyList<WalkedForecast> walked) => [.. walked.Select(w => w.Forecast)];

    private double? BestPossible(IReadOnlyDictionary<string, JobTruth> truths)
    {
        var losses = new List<double>(Shipped.Count);
        foreach (Forecast f in Forecasts(Shipped))
        {
            if (f.Need is { } need && truths.TryGetValue(f.JobId, out JobTruth? truth))
            {
                losses.Add(Forecast.Loss(truth.RecordedOdds.GetValueOrDefault(need)));
            }
        }

        return losses.Count > 0 && losses.Count == Shipped.Count ? losses.Average() : null;
    }

    private TrueFigures? AgainstTruth(IReadOnlyDictionary<string, JobTruth> truths)
    {
        (double Ours, double Plain, double Best)[] losses =
        [
            .. Shipped.Zip(ComplaintOnly, (a, b) => (Ours: a.Forecast, Plain: b.Forecast))
                .Select(p => (p.Ours, p.Plain, Truth: truths.GetValueOrDefault(p.Ours.JobId)))
                .Where(p => p.Truth?.TrueNeed is not null)
                .Select(p => (Forecast.Loss(p.Ours.Of(p.Truth!.TrueNeed!)), Forecast.Loss(p.Plain.Of(p.Truth.TrueNeed!)), Forecast.Loss(p.Truth.Odds.GetValueOrDefault(p.Truth.TrueNeed!)))),
        ];
        return losses.Length == 0 ? null : new TrueFigures(losses.Length, losses.Average(l => l.Ours), losses.Average(l => l.Plain), losses.Average(l => l.Best));
    }

    private double? Share(Func<WalkedForecast, bool> covered) => Shipped.Count == 0 ? null : Shipped.Average(f => covered(f) ? 1.0 : 0.0);

    private static IReadOnlyList<WalkedForecast> Some(IReadOnlyList<WalkedForecast> all, Func<Forecast, bool> wanted) =>
        [.. all.Where(w => wanted(w.Forecast))];
}
