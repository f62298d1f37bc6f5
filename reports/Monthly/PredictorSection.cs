using System.Globalization;
using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Statistics;
using PartsSignal.Analysis.Statistics.Intervals;
using PartsSignal.Reports.Charts;
using PartsSignal.Reports.Components;

namespace PartsSignal.Reports.Monthly;

/// <summary>The record of the part predictor.</summary>
/// <param name="Answers">How often it was right, in words.</param>
/// <param name="Rows">Scores of each contender on the test months.</param>
/// <param name="Month">Scores in the month of the report alone, the predictor's first; empty if none of its calls was tested.</param>
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
    private const string AllCalls = "all calls";
    private const int NotesOnPage = 15;

    // With fewer, the interval of a group of a tenth of them reaches further than ten points.
    private const int ManyJobs = 1000;
    private const string OnTestMonths = "Closed jobs of months that nothing had been learned from.";

    private sealed record Score(string Predictor, string Slice, int Jobs, double? LogLoss, double? Top1, double? Top3, double? CalibrationError);

    private sealed record MonthScore(string Month, int Jobs, double LogLoss, double LogLossComplaintOnly, double LogLossBackOff, double Top1, double Top3);

    private sealed record Bin(string Slice, int Jobs, double Said, Estimate Happened);

    private sealed record Contender(string What, bool Ships);

    /// <summary>The predictor's record; null if nothing was learned.</summary>
    public static PredictorFacts? Read(Database database, MonthlyOptions options)
    {
        if (!database.Has("prediction_scores"))
        {
            return null;
        }

        string month = options.Month.ToString("yyyy-MM", CultureInfo.InvariantCulture);
        IReadOnlyList<ContenderScore> rows = [.. database.Read<Score>("queries/report/prediction_scores.sql").Select(s => new ContenderScore(Name(s.Predictor), Calls(s.Slice), s.Jobs, s.LogLoss, s.Top1, s.Top3, s.CalibrationError))];
        IReadOnlyList<Contender> contest = database.Has("prediction_contest") ? database.ReadTable<Contender>("prediction_contest") : [];
        IReadOnlyList<CalibrationBin> bins = [.. database.ReadTable<Bin>("prediction_reliability").Where(b => b.Slice == All).Select(b => new CalibrationBin(b.Said, b.Happened, b.Jobs))];
        return new PredictorFacts(
            Answers(rows, contest.Count),
            rows,
            [.. database.ReadTable<MonthScore>("prediction_by_month").Where(m => m.Month == month).SelectMany(Scores)],
            bins, $"{Format.Count(bins.Sum(b => b.Answers))} closed jobs of the test months; first answers, in groups of equal size.",
            [.. contest.Where(c => c.Ships).Select(c => ("How it answers", c.What)), .. options.ModelCard]);
    }

    private static IEnumerable<ContenderScore> Scores(MonthScore month) =>
    [
        new(Name("shipped"), AllCalls, month.Jobs, month.LogLoss, month.Top1, month.Top3, null),
        new(Name("complaint_only"), AllCalls, month.Jobs, month.LogLossComplaintOnly, null, null, null),
        new(Name("back_off"), AllCalls, month.Jobs, month.LogLossBackOff, null, null, null),
    ];

    private static string Answers(IReadOnlyList<ContenderScore> rows, int ways)
    {
        ContenderScore? Of(string predictor) => rows.FirstOrDefault(r => r.Contender == Name(predictor) && r.Calls == AllCalls);
        string right = Of("shipped") is { Top1: { } first, Top3: { } three } own
            ? $"On {Format.Count(own.Jobs)} later jobs that it had not learned from, the first answer was right {Format.Share(Right(first, own.Jobs))} of the time, and the right one was among the first three {Format.Share(Right(three, own.Jobs))} of the time."
            : "The answers were tried on later jobs that nothing had been learned from.";
        string tally = Of("complaint_only") is { Top1: { } plain } ? $" A tally sheet per complaint would have been right {Format.Percent(plain)} of the time on the same jobs." : "";
        return right + tally + (ways > 1 ? $" This way of answering was chosen from {ways} that were tried on earlier months." : "");
    }

    private static Estimate Right(double share, long jobs) => Proportion.Wilson((long)Math.Round(share * jobs), jobs);

    private static string Name(string predictor) => predictor switch
    {
        "shipped" => "this program",
        "complaint_only" => "a tally sheet per complaint",
        "back_off" => "counting by model, family and type",
        _ => Format.Words(predictor),
    };

    private static string Calls(string slice) => slice == All ? AllCalls : Format.Words(slice[(slice.IndexOf(':', StringComparison.Ordinal) + 1)..]);

    /// <param name="facts">What is known, or null if nothing was learned.</param>
    public static Section Build(PredictorFacts? facts) => new("predictor", "How good the predictions were", [.. Blocks(facts)]);

    private static IEnumerable<IBlock> Blocks(PredictorFacts? facts)
    {
        if (facts is null || facts.Rows.Count == 0)
        {
            yield return new Missing("The predictions have no record yet: there are too few closed jobs with a known cause to learn from and then to test on later months.");
            yield break;
        }

        yield return new Paragraph(facts.Answers);
        yield return TableView.Create("predictor", "How often the answer was right", OnTestMonths, facts.Rows,
            [
                new("Answered by", r => r.Contender), new("Complaint", r => r.Calls), new("Jobs", r => r.Jobs, CellKind.Count),
                new("First answer right (95 %)", r => r.Top1 is { } right ? Right(right, r.Jobs) : null, CellKind.Share), new("Right within three (95 %)", r => r.Top3 is { } right ? Right(right, r.Jobs) : null, CellKind.Share),
            ]);
        yield return facts.Month is [{ Top1: { } first, Top3: { } three } month, ..]
            ? new Paragraph($"Of {Format.Count(month.Jobs)} closed {(month.Jobs == 1 ? "job" : "jobs")} of this month, the first answer was right in {Format.Count((long)Math.Round(first * month.Jobs))}, and the right one was among the first three in {Format.Count((long)Math.Round(three * month.Jobs))}.")
            : new Missing("No closed call of this month was among those tested.");
        if (facts.Bins.Count > 0)
        {
            yield return Plot(facts);
        }

        if (facts.Card.Count > 0)
        {
            yield return TableView.Create("model-card", "About the predictions", "What they rest on, and what they are not for.", facts.Card, [new("Point", c => c.Point), new("What to know", c => c.Text)]);
        }

        yield return TableView.Create("predictor-notes", "Notes on method",
            $"{OnTestMonths} Log loss says how much chance the answers gave to what came true: lower is better, 0 would be perfect. Calibration error is how far, on average, the stated chances lie from how often they came true; with few jobs much of it is chance.",
            facts.Rows,
            [
                new("Answered by", r => r.Contender), new("Complaint", r => r.Calls), new("Jobs", r => r.Jobs, CellKind.Count),
                new("Log loss", r => r.LogLoss, CellKind.Number), new("Calibration error", r => r.CalibrationError, CellKind.Share),
            ]) with
        {
            RowsOnPage = NotesOnPage,
        };
    }

    private static CalibrationPlot Plot(PredictorFacts facts)
    {
        long jobs = facts.Bins.Sum(b => b.Answers);
        int off = facts.Bins.Count(b => b.CameTrue is { Lower: { } low, Upper: { } high } && (b.Stated < low || b.Stated > high));
        string conclusion = off == 0
            ? jobs < ManyJobs ? $"Nothing speaks against the stated chances, but {Format.Count(jobs)} jobs would show only large errors."
                : "You can rely on the stated chances: in every group, what came true agrees with them."
            : $"In {off} of {facts.Bins.Count} groups, what came true does not agree with the stated chances; by chance alone, about one in 20 would not. Read those with care.";
        return new CalibrationPlot(
            new ChartText("calibration", "Stated chances and what came true", conclusion, facts.BinBasis,
                string.Join("; ", facts.Bins.Select(b => $"stated {Format.Percent(b.Stated)}, came true {Format.Share(b.CameTrue)}")) + "."),
            facts.Bins);
    }
}
