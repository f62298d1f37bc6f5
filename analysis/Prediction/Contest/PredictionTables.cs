using System.Globalization;
using PartsSignal.Analysis.Statistics;
using PartsSignal.Analysis.Statistics.Intervals;

namespace PartsSignal.Analysis.Prediction.Contest;

/// <summary>The result tables of learning. Empty where there was no contest.</summary>
public static class PredictionTables
{
    /// <summary>The contest, a row per contender.</summary>
    public static IReadOnlyList<ContestRow> Contest(LearningResult learned) =>
    [
        .. learned.Entries.Select(e => new ContestRow(
            e.Name, e.What, learned.TimeSplit!.Validation.From, learned.TimeSplit.Validation.To.AddDays(-1), e.Scores.Jobs, e.Scores.LogLoss, e.Scores.Brier,
            e.Scores.Top1, e.Scores.Top3, e.Scores.Top5, e.Scores.CalibrationError, e.Scores.NeverSeen, e.Temperature,
            e.Behind.Value, e.Behind.Lower, e.Behind.Upper, e.Ships)),
    ];

    /// <summary>Figures of the test months with intervals, for all calls and for no-fill calls.</summary>
    public static IReadOnlyList<ScoreRow> Scores(LearningResult learned, int seed) =>
        learned.Answers is not { } answers ? [] : [.. Slices(answers).SelectMany(s => SliceScores(s.Name, s.Answers, seed))];

    /// <summary>Reliability of the shipped predictor, ten bins of equal size.</summary>
    public static IReadOnlyList<ReliabilityRow> ReliabilityTable(LearningResult learned) =>
        learned.Answers is not { } answers ? [] :
        [
            .. Slices(answers).SelectMany(s => Reliability.Table(TestAnswers.Forecasts(s.Answers.Shipped)).Select(b =>
            {
                Estimate wilson = Proportion.Wilson((long)Math.Round(b.Happened * b.Jobs), b.Jobs);
                return new ReliabilityRow(s.Name, b.Bin, b.From, b.To, b.Jobs, b.Said, b.Happened, wilson.Lower, wilson.Upper);
            })),
        ];

    /// <summary>Risk against coverage of the shipped predictor.</summary>
    public static IReadOnlyList<RiskRow> Risk(LearningResult learned) =>
        learned.Answers is not { } answers ? [] :
        [
            .. Slices(answers).SelectMany(s => RiskCoverage.Curve(TestAnswers.Forecasts(s.Answers.Shipped))
                .Select(p => new RiskRow(s.Name, p.Coverage, p.Confidence, p.Jobs, p.Risk))),
        ];

    /// <summary>The test months one by one: drift shows here first.</summary>
    public static IReadOnlyList<PredictionMonthRow> Months(LearningResult learned) =>
        learned.Answers is not { } answers ? [] :
        [
            .. answers.Shipped.Select((w, i) => (Ours: w, Plain: answers.ComplaintOnly[i].Forecast, BackOff: answers.BackOff[i].Forecast))
                .GroupBy(r => r.Ours.Forecast.OpenedOn.ToString("yyyy-MM", CultureInfo.InvariantCulture), StringComparer.Ordinal)
                .OrderBy(g => g.Key, StringComparer.Ordinal)
                .Select(g => new PredictionMonthRow(
                    g.Key,
                    g.Count(),
                    g.Average(r => r.Ours.Forecast.LogLoss),
                    g.Average(r => r.Plain.LogLoss),
                    g.Average(r => r.BackOff.LogLoss),
                    g.Average(r => r.Ours.Forecast.Rank == 1 ? 1.0 : 0),
                    g.Average(r => r.Ours.Forecast.Rank <= 3 ? 1.0 : 0),
                    g.Average(r => r.Ours.Covered80 ? 1.0 : 0),
                    g.Average(r => r.Ours.Covered95 ? 1.0 : 0),
                    g.Average(r => r.Ours.Size80),
                    g.Average(r => r.Ours.Size95),
                    g.Average(r => r.Ours.Forecast.Truth < 0 ? 1.0 : 0))),
        ];

    private static IEnumerable<(string Name, TestAnswers Answers)> Slices(TestAnswers answers)
    {
        yield return ("all", answers);
        yield return ("complaint:no_fill", answers.Where(f => f.ComplaintKind == "no_fill"));
    }

    private static IEnumerable<ScoreRow> SliceScores(string slice, TestAnswers answers, int seed)
    {
        IReadOnlyList<Forecast> ours = TestAnswers.Forecasts(answers.Shipped), plain = TestAnswers.Forecasts(answers.ComplaintOnly), backOff = TestAnswers.Forecasts(answers.BackOff);
        foreach ((string name, IReadOnlyList<Forecast> forecasts) in new[] { ("shipped", ours), ("complaint_only", plain), ("complaint_on_type", TestAnswers.Forecasts(answers.ComplaintOnType)), ("back_off", backOff) })
        {
            yield return Row(name, slice, "log_loss", forecasts, f => f.LogLoss, seed);
            yield return Row(name, slice, "brier", forecasts, f => f.Brier, seed);
            yield return Row(name, slice, "top1", forecasts, f => f.Rank <= 1 ? 1 : 0, seed);
            yield return Row(name, slice, "top3", forecasts, f => f.Rank <= 3 ? 1 : 0, seed);
            yield return Row(name, slice, "top5", forecasts, f => f.Rank <= 5 ? 1 : 0, seed);
            yield return Row(name, slice, "calibration_error", forecasts.Count, WeekBootstrap.CalibrationError(forecasts, seed));
        }

        yield return Paired("shipped_minus_complaint_only", slice, ours, plain, seed);
        yield return Paired("shipped_minus_back_off", slice, ours, backOff, seed);
        double[] in80 = [.. answers.Shipped.Select(w => w.Covered80 ? 1.0 : 0)], in95 = [.. answers.Shipped.Select(w => w.Covered95 ? 1.0 : 0)];
        yield return Row("shipped", slice, "coverage_80", ours.Count, WeekBootstrap.Mean(ours, in80, seed));
        yield return Row("shipped", slice, "coverage_95", ours.Count, WeekBootstrap.Mean(ours, in95, seed));
    }

    private static ScoreRow Row(string predictor, string slice, string figure, IReadOnlyList<Forecast> forecasts, Func<Forecast, double> value, int seed) =>
        Row(predictor, slice, figure, forecasts.Count, WeekBootstrap.Mean(forecasts, [.. forecasts.Select(value)], seed));

    private static ScoreRow Paired(string name, string slice, IReadOnlyList<Forecast> ours, IReadOnlyList<Forecast> other, int seed) =>
        Row(name, slice, "log_loss", ours.Count, WeekBootstrap.Mean(ours, [.. ours.Zip(other, (a, b) => a.LogLoss - b.LogLoss)], seed));

    private static ScoreRow Row(string predictor, string slice, string figure, int jobs, Estimate e) =>
        new(predictor, slice, figure, jobs, e.Value, e.Lower, e.Upper, e.Missing);
}
