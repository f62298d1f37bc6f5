using System.Globalization;
using PartsSignal.Analysis.Statistics;
using PartsSignal.Analysis.Statistics.Intervals;

namespace PartsSignal.Analysis.Prediction.Contest;

/// <summary>The result tables of learning. Empty where there was no contest.</summary>
public static class PredictionTables
{
    private const int LeastCallsPerSlice = 50;

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

    /// <summary>
    /// The test months by type of appliance and kind of complaint, and asked again with something held back: the shipped
    /// predictor beside plain complaint shares, and what its sets covered.
    /// </summary>
    public static IReadOnlyList<SliceRow> SliceTable(LearningResult learned, int seed) =>
        learned.Answers is not { } answers ? [] :
        [
            Slice("all", "Every call of the test months", answers, seed),
            .. CallSlice.All.Where(s => answers.Slices.ContainsKey(s.Name)).Select(s => Slice(s.Name, s.What, answers.Slices[s.Name], seed)),
            .. Groups(answers, f => f.ApplianceType).Select(g => Slice($"type:{g}", "Calls on that type", answers.Where(f => f.ApplianceType == g), seed)),
            .. Groups(answers, f => f.ComplaintKind).Select(g => Slice($"complaint:{g}", "Calls with that complaint", answers.Where(f => f.ComplaintKind == g), seed)),
        ];

    private static IEnumerable<string> Groups(TestAnswers answers, Func<Forecast, string> of) =>
        answers.Shipped.CountBy(w => of(w.Forecast), StringComparer.Ordinal).Where(g => g.Value >= LeastCallsPerSlice).Select(g => g.Key).Order(StringComparer.Ordinal);

    private static SliceRow Slice(string name, string what, TestAnswers answers, int seed)
    {
        IReadOnlyList<Forecast> ours = TestAnswers.Forecasts(answers.Shipped), plain = TestAnswers.Forecasts(answers.ComplaintOnly);
        TestFigures figures = answers.Judge();
        Estimate behind = WeekIntervals.Mean(ours, [.. ours.Zip(plain, (a, b) => a.LogLoss - b.LogLoss)], seed);
        return new SliceRow(
            name, what, ours.Count, figures.Shipped.LogLoss, figures.ComplaintOnly.LogLoss, figures.ComplaintOnType.LogLoss, behind.Value, behind.Lower, behind.Upper,
            figures.Shipped.Top1, figures.Shipped.Top3, figures.Coverage80, figures.Coverage95,
            ours.Count == 0 ? null : answers.Shipped.Average(w => w.Size80), ours.Count == 0 ? null : answers.Shipped.Average(w => w.Size95));
    }

    private static IEnumerable<(string Name, TestAnswers Answers)> Slices(TestAnswers answers)
    {
        yield return ("all", answers);
        yield return ($"complaint:{ReportedComplaintKinds.NoFill}", answers.Where(f => f.ComplaintKind == ReportedComplaintKinds.NoFill));
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
            yield return Row(name, slice, "calibration_error", forecasts.Count, WeekIntervals.CalibrationError(forecasts, seed));
        }

        yield return Paired("shipped_minus_complaint_only", slice, ours, plain, seed);
        yield return Paired("shipped_minus_back_off", slice, ours, backOff, seed);
        double[] in80 = [.. answers.Shipped.Select(w => w.Covered80 ? 1.0 : 0)], in95 = [.. answers.Shipped.Select(w => w.Covered95 ? 1.0 : 0)];
        yield return Row("shipped", slice, "coverage_80", ours.Count, WeekIntervals.Mean(ours, in80, seed));
        yield return Row("shipped", slice, "coverage_95", ours.Count, WeekIntervals.Mean(ours, in95, seed));
    }

    private static ScoreRow Row(string predictor, string slice, string figure, IReadOnlyList<Forecast> forecasts, Func<Forecast, double> value, int seed) =>
        Row(predictor, slice, figure, forecasts.Count, WeekIntervals.Mean(forecasts, [.. forecasts.Select(value)], seed));

    private static ScoreRow Paired(string name, string slice, IReadOnlyList<Forecast> ours, IReadOnlyList<Forecast> other, int seed) =>
        Row(name, slice, "log_loss", ours.Count, WeekIntervals.Mean(ours, [.. ours.Zip(other, (a, b) => a.LogLoss - b.LogLoss)], seed));

    private static ScoreRow Row(string predictor, string slice, string figure, int jobs, Estimate e) =>
        new(predictor, slice, figure, jobs, e.Value, e.Lower, e.Upper, e.Missing);
}

/// <summary>A contender in the validation months: row of <c>prediction_contest</c>.</summary>
public sealed record ContestRow(
    string Contender, string What, DateOnly JudgedFrom, DateOnly JudgedTo, int Jobs, double? LogLoss, double? Brier, double? Top1, double? Top3, double? Top5,
    double? CalibrationError, double? NeverSeen, double Temperature, double? Behind, double? BehindLower, double? BehindUpper, bool Ships);

/// <summary>A figure of the test months with its week-block interval: row of <c>prediction_scores</c>.</summary>
/// <param name="Predictor">shipped, complaint_only, back_off, or shipped_minus_complaint_only and shipped_minus_back_off (paired).</param>
/// <param name="Slice"><c>all</c>, or <c>complaint:no_fill</c> for the calls that do not fill; there are no others.</param>
/// <param name="Figure">log_loss (nats), brier, top1, top3, top5, calibration_error, coverage_80, coverage_95.</param>
/// <param name="Jobs">Calls behind it.</param>
/// <param name="Value">The figure, or null if there is none.</param>
/// <param name="Lower">Lower end of the 95 % interval, or null if there is none.</param>
/// <param name="Upper">Upper end, or null if there is none.</param>
/// <param name="Missing">Why there is no interval, or null if there is one.</param>
public sealed record ScoreRow(string Predictor, string Slice, string Figure, int Jobs, double? Value, double? Lower, double? Upper, string? Missing);

/// <summary>Said and happened in the test months: row of <c>prediction_reliability</c>.</summary>
public sealed record ReliabilityRow(string Slice, int Bin, double From, double To, int Jobs, double Said, double Happened, double? Lower, double? Upper);

/// <summary>Risk against coverage in the test months: row of <c>prediction_risk_coverage</c>.</summary>
public sealed record RiskRow(string Slice, double Coverage, double Confidence, int Jobs, double Risk);

/// <summary>One test month: row of <c>prediction_by_month</c>.</summary>
public sealed record PredictionMonthRow(
    string Month, int Jobs, double LogLoss, double LogLossComplaintOnly, double LogLossBackOff, double Top1, double Top3,
    double Coverage80, double Coverage95, double MeanSize80, double MeanSize95, double NeverSeen);

/// <summary>A slice of the test months: row of <c>prediction_slices</c>. Null: no calls.</summary>
/// <param name="Slice">all, a slice with something held back, <c>type:T</c> or <c>complaint:K</c>.</param>
/// <param name="What">The same in words.</param>
/// <param name="Jobs">Calls behind it.</param>
/// <param name="LogLoss">Of the shipped predictor, nats.</param>
/// <param name="LogLossComplaintOnly">Of shares by complaint.</param>
/// <param name="LogLossComplaintOnType">Of shares by complaint and type.</param>
/// <param name="AboveComplaintOnly">Log loss above that of complaint shares, paired; below 0 is better.</param>
/// <param name="AboveLower">Lower end of its 95 % interval (week blocks).</param>
/// <param name="AboveUpper">Upper end.</param>
/// <param name="Top1">Share where the likeliest need was right.</param>
/// <param name="Top3">Share where it was among the three likeliest.</param>
/// <param name="Coverage80">Share of 80 % sets that held it.</param>
/// <param name="Coverage95">Share of 95 % sets that held it.</param>
/// <param name="MeanSize80">Needs in an 80 % set.</param>
/// <param name="MeanSize95">Needs in a 95 % set.</param>
public sealed record SliceRow(
    string Slice, string What, int Jobs, double? LogLoss, double? LogLossComplaintOnly, double? LogLossComplaintOnType,
    double? AboveComplaintOnly, double? AboveLower, double? AboveUpper, double? Top1, double? Top3,
    double? Coverage80, double? Coverage95, double? MeanSize80, double? MeanSize95);

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
