using System.Globalization;
using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Statistics;
using PartsSignal.Reports.Charts;
using PartsSignal.Reports.Components;

namespace PartsSignal.Reports.Monthly;

/// <summary>The record of the part predictor.</summary>
/// <param name="Answers">Which model answers, and why, in words.</param>
/// <param name="Rows">Scores of each contender on the test months.</param>
/// <param name="Month">Scores in the month of the report alone; empty if none of its calls was tested.</param>
/// <param name="Bins">Odds stated against what came true; empty if not computed.</param>
/// <param name="BinBasis">What the calibration counts.</param>
/// <param name="Card">The model card: what it is, what it learned from, what it is not for.</param>
internal sealed record PredictorFacts(
    string Answers, IReadOnlyList<ContenderScore> Rows, IReadOnlyList<ContenderScore> Month, IReadOnlyList<CalibrationBin> Bins, string BinBasis,
    IReadOnlyList<(string Point, string Text)> Card);

/// <summary>How well one contender did.</summary>
/// <param name="Contender">What it is, in words.</param>
/// <param name="Calls">All calls, no-fill calls, ...</param>
/// <param name="Jobs">Jobs tested.</param>
/// <param name="LogLoss">Mean log loss in nats, or null if not known.</param>
/// <param name="Top1">Share whose first answer is right, or null if not known.</param>
/// <param name="Top3">Share with the right answer among the first three, or null if not known.</param>
/// <param name="CalibrationError">Mean gap between odds stated and share come true, or null if not known.</param>
internal sealed record ContenderScore(string Contender, string Calls, long Jobs, double? LogLoss, double? Top1, double? Top3, double? CalibrationError);

/// <summary>How far the predictor's odds can be trusted.</summary>
internal static class PredictorSection
{
    private const string All = "all";
    private const string Comparison = "It is shown beside what a shop would say from a tally sheet per complaint, on months that neither had seen.";

    private sealed record Score(string Predictor, string Slice, int Jobs, double? LogLoss, double? Top1, double? Top3, double? CalibrationError);

    private sealed record MonthScore(string Month, int Jobs, double LogLoss, double LogLossComplaintOnly, double LogLossBackOff, double Top1, double Top3);

    private sealed record Bin(string Slice, int Jobs, double Said, Estimate Happened);

    private sealed record Contender(string What, int Jobs, double? LogLoss, bool Ships);

    /// <summary>The predictor's record; null if nothing was learned.</summary>
    public static PredictorFacts? Read(Database database, MonthlyOptions options)
    {
        if (!database.Has("prediction_scores"))
        {
            return null;
        }

        string month = options.Month.ToString("yyyy-MM", CultureInfo.InvariantCulture);
        IReadOnlyList<CalibrationBin> bins = [.. database.ReadTable<Bin>("prediction_reliability").Where(b => b.Slice == All).Select(b => new CalibrationBin(b.Said, b.Happened, b.Jobs))];
        return new PredictorFacts(
            Answers(database),
            [.. database.Read<Score>("queries/report/prediction_scores.sql").Select(s => new ContenderScore(Name(s.Predictor), Calls(s.Slice), s.Jobs, s.LogLoss, s.Top1, s.Top3, s.CalibrationError))],
            [.. database.ReadTable<MonthScore>("prediction_by_month").Where(m => m.Month == month).SelectMany(Scores)],
            bins, $"{Format.Count(bins.Sum(b => b.Answers))} closed jobs of the test months; first answers, in groups of equal size.", options.ModelCard);
    }

    private static IEnumerable<ContenderScore> Scores(MonthScore month) =>
    [
        new(Name("shipped"), All, month.Jobs, month.LogLoss, month.Top1, month.Top3, null),
        new(Name("complaint_only"), All, month.Jobs, month.LogLossComplaintOnly, null, null, null),
        new(Name("back_off"), All, month.Jobs, month.LogLossBackOff, null, null, null),
    ];

    private static string Answers(Database database)
    {
        IReadOnlyList<Contender> contest = database.Has("prediction_contest") ? database.ReadTable<Contender>("prediction_contest") : [];
        return contest.FirstOrDefault(c => c.Ships) is { } winner
            ? string.Create(CultureInfo.InvariantCulture,
                $"Answers come from: {winner.What}. It won against {contest.Count - 1} others on {winner.Jobs:#,0} later jobs (log loss {winner.LogLoss:0.000}). {Comparison}")
            : Comparison;
    }

    private static string Name(string predictor) => predictor switch
    {
        "shipped" => "the predictor",
        "complaint_only" => "most common by complaint",
        "back_off" => "counting, model to type",
        _ => Format.Words(predictor),
    };

    private static string Calls(string slice) => slice == All ? All : Format.Words(slice[(slice.IndexOf(':', StringComparison.Ordinal) + 1)..]);

    /// <param name="facts">What is known, or null if nothing was learned.</param>
    public static Section Build(PredictorFacts? facts) => new("predictor", "The predictor's record", [.. Blocks(facts)]);

    private static IEnumerable<IBlock> Blocks(PredictorFacts? facts)
    {
        if (facts is null || facts.Rows.Count == 0)
        {
            yield return new Missing("The predictor has no record: there were too few closed jobs with a known cause to learn from and then to test on later months.");
            yield break;
        }

        yield return new Paragraph(facts.Answers);
        yield return ScoreTable("predictor", "On months it had not seen", "Closed jobs of the test months; log loss: lower is better, 0 would be perfect.", facts.Rows);
        yield return facts.Month.Count == 0
            ? new Missing("No closed call of this month was among those tested.")
            : ScoreTable("predictor-month", "On the calls of this month", "Closed jobs of this month, predicted from what was known when the call came in.", facts.Month);
        if (facts.Bins.Count > 0)
        {
            yield return Plot(facts);
        }

        if (facts.Card.Count > 0)
        {
            yield return TableView.Create("model-card", "Model card", "What answers, and what it is not for.", facts.Card, [new("Point", c => c.Point), new("What to know", c => c.Text)]);
        }
    }

    private static TableView ScoreTable(string key, string title, string basis, IReadOnlyList<ContenderScore> rows) => TableView.Create(key, title, basis, rows,
        [
            new("Answered by", r => r.Contender), new("Calls", r => r.Calls), new("Jobs", r => r.Jobs, CellKind.Count), new("Log loss, nats", r => r.LogLoss, CellKind.Number),
            new("First answer right", r => r.Top1, CellKind.Share), new("Right within three", r => r.Top3, CellKind.Share), new("Calibration error", r => r.CalibrationError, CellKind.Share),
        ]);

    private static CalibrationPlot Plot(PredictorFacts facts)
    {
        int off = facts.Bins.Count(b => b.CameTrue is { Lower: { } low, Upper: { } high } && (b.Stated < low || b.Stated > high));
        string conclusion = off == 0
            ? "The odds can be taken at their word: every group's interval holds the odds stated."
            : $"In {off} of {facts.Bins.Count} groups the odds stated lie outside the interval of what came true; there they are to be read with care.";
        return new CalibrationPlot(
            new ChartText("calibration", "Odds stated and what came true", conclusion, facts.BinBasis,
                string.Join("; ", facts.Bins.Select(b => $"stated {Format.Percent(b.Stated)}, came true {Format.Share(b.CameTrue)}")) + "."),
            facts.Bins);
    }
}
