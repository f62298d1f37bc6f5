using System.Text.Json.Nodes;
using PartsSignal.Analysis.Prediction;
using PartsSignal.Analysis.Prediction.Contest;

namespace PartsSignal.SampleShop.Scoring;

/// <summary>How close the predictor's test answers come to the best odds anybody could have given, from 0 (the tally by complaint) to 1.</summary>
internal static class PredictionScore
{
    private const string NoFill = "no_fill";

    /// <summary>The keys of <c>prediction</c> in the run record that need the truth; losses are in nats per call.</summary>
    public static JsonObject Compute(TestAnswers answers, IReadOnlyDictionary<string, JobTruth> truths)
    {
        JsonObject section = Figures(answers, truths);
        section[NoFill] = Figures(answers.Where(f => f.ComplaintKind == NoFill), truths);
        return section;
    }

    private static JsonObject Figures(TestAnswers answers, IReadOnlyDictionary<string, JobTruth> truths)
    {
        TestFigures figures = answers.Judge();
        double? best = BestPossible(answers, truths);
        return new JsonObject
        {
            ["log_loss_best_possible"] = Round(best),
            ["gap_closed"] = Round(GapClosed(figures.ComplaintOnly.LogLoss, figures.Shipped.LogLoss, best)),
            ["gap_closed_from_complaint_on_type"] = Round(GapClosed(figures.ComplaintOnType.LogLoss, figures.Shipped.LogLoss, best)),
            ["against_true_cause"] = AgainstTrueCause(answers, truths),
        };
    }

    /// <summary>(plain - ours) / (plain - best), or null if an end is missing or the ends are the same.</summary>
    internal static double? GapClosed(double? plain, double? ours, double? best) =>
        plain is { } p && ours is { } o && best is { } b && p - b > 1e-9 ? (p - o) / (p - b) : null;

    // A mean over only some of the calls could not stand beside the predictor's own.
    private static double? BestPossible(TestAnswers answers, IReadOnlyDictionary<string, JobTruth> truths)
    {
        double[] losses = [.. TestAnswers.Forecasts(answers.Shipped)
            .Where(f => f.Need is not null && truths.ContainsKey(f.JobId))
            .Select(f => Forecast.Loss(truths[f.JobId].RecordedOdds.GetValueOrDefault(f.Need!)))];
        return losses.Length > 0 && losses.Length == answers.Shipped.Count ? losses.Average() : null;
    }

    private static JsonObject? AgainstTrueCause(TestAnswers answers, IReadOnlyDictionary<string, JobTruth> truths)
    {
        (double Ours, double Plain, double Best)[] losses =
        [
            .. answers.Shipped.Zip(answers.ComplaintOnly, (a, b) => (Ours: a.Forecast, Plain: b.Forecast, Truth: truths.GetValueOrDefault(a.Forecast.JobId)))
                .Where(p => p.Truth?.TrueNeed is not null)
                .Select(p => (Need: p.Truth!.TrueNeed!, p.Ours, p.Plain, p.Truth.Odds))
                .Select(p => (Forecast.Loss(p.Ours.Of(p.Need)), Forecast.Loss(p.Plain.Of(p.Need)), Forecast.Loss(p.Odds.GetValueOrDefault(p.Need)))),
        ];
        if (losses.Length == 0)
        {
            return null;
        }

        (double ours, double plain, double best) = (losses.Average(l => l.Ours), losses.Average(l => l.Plain), losses.Average(l => l.Best));
        return new JsonObject
        {
            ["jobs"] = losses.Length,
            ["log_loss"] = Round(ours),
            ["log_loss_complaint_only"] = Round(plain),
            ["log_loss_best_possible"] = Round(best),
            ["gap_closed"] = Round(GapClosed(plain, ours, best)),
        };
    }

    private static double? Round(double? value) => value is { } v ? Math.Round(v, 6) : null;
}
