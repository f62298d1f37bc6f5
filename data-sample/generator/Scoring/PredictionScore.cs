using System.Globalization;
using System.IO.Compression;
using System.Text.Json.Nodes;
using PartsSignal.Analysis.Prediction;
using PartsSignal.Analysis.Prediction.Contest;

namespace PartsSignal.SampleShop.Scoring;

/// <summary>How close the predictor's test answers come to the best odds anybody could have given, from 0 (the tally by complaint) to 1.</summary>
internal static class PredictionScore
{
    /// <summary>The keys of <c>prediction</c> in the run record that need the truth; losses are in nats per call.</summary>
    public static JsonObject Compute(TestAnswers answers, IReadOnlyDictionary<string, JobTruth> truths)
    {
        JsonObject section = Figures(answers, truths);
        section[ReportedComplaintKinds.NoFill] = Figures(answers.Where(f => f.ComplaintKind == ReportedComplaintKinds.NoFill), truths);
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

/// <summary>What really happened on one job of a fictional shop, a row of <c>truth/jobs.csv.gz</c>.</summary>
/// <param name="JobId">The job.</param>
/// <param name="TrueNeed">What was really at fault, or null if not recorded.</param>
/// <param name="Odds">Best possible odds of the true need.</param>
/// <param name="RecordedOdds">Best possible odds of the need that gets written down, wrong diagnoses included.</param>
internal sealed record JobTruth(string JobId, string? TrueNeed, IReadOnlyDictionary<string, double> Odds, IReadOnlyDictionary<string, double> RecordedOdds)
{
    /// <summary>Reads the truth of some jobs.</summary>
    /// <param name="path">Path of <c>jobs.csv.gz</c>.</param>
    /// <param name="jobs">The jobs wanted.</param>
    /// <exception cref="InvalidDataException">The file has another layout.</exception>
    public static IReadOnlyDictionary<string, JobTruth> Read(string path, IReadOnlySet<string> jobs)
    {
        using var text = new StreamReader(new GZipStream(File.OpenRead(path), CompressionMode.Decompress));
        string[] head = (text.ReadLine() ?? "").Split(',');
        int job = Column("job_id"), need = Column("true_component"), odds = Column("odds"), recorded = Column("recorded_odds");
        var truths = new Dictionary<string, JobTruth>(StringComparer.Ordinal);
        while (text.ReadLine() is { } line)
        {
            string[] cells = line.Split(',');
            if (cells.Length != head.Length)
            {
                throw new InvalidDataException($"{path}: a row has {cells.Length} cells where the header has {head.Length}.");
            }

            if (jobs.Contains(cells[job]))
            {
                truths[cells[job]] = new JobTruth(cells[job], cells[need].Length == 0 ? null : cells[need], Parse(cells[odds]), Parse(cells[recorded]));
            }
        }

        return truths;

        int Column(string name) => Array.IndexOf(head, name) is >= 0 and var place ? place : throw new InvalidDataException($"{path} has no column {name}.");
    }

    /// <summary>Reads odds written as <c>need:probability;need:probability</c>.</summary>
    /// <exception cref="InvalidDataException">A part is not written that way.</exception>
    public static IReadOnlyDictionary<string, double> Parse(string text) =>
        text.Split(';', StringSplitOptions.RemoveEmptyEntries).Select(p => p.Split(':')).ToDictionary(
            p => p[0],
            p => p.Length == 2 && double.TryParse(p[1], NumberStyles.Float, CultureInfo.InvariantCulture, out double odds)
                ? odds
                : throw new InvalidDataException($"'{text}' does not list odds as need:probability."),
            StringComparer.Ordinal);
}
