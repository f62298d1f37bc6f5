using PartsSignal.Reports.Charts;

namespace PartsSignal.Reports.Monthly;

/// <summary>The record of the part predictor.</summary>
/// <param name="Answers">Which model answers, and why, in words.</param>
/// <param name="Rows">Scores of each contender on the test months.</param>
/// <param name="Month">Scores in the month of the report alone; empty: none of its calls was tested.</param>
/// <param name="Bins">Odds stated against what came true; empty: not computed.</param>
/// <param name="BinBasis">What the calibration counts.</param>
/// <param name="Card">The model card: what it is, what it learned from, what it is not for.</param>
public sealed record PredictorFacts(
    string Answers, IReadOnlyList<ScoreRow> Rows, IReadOnlyList<ScoreRow> Month, IReadOnlyList<CalibrationBin> Bins, string BinBasis, IReadOnlyList<(string Point, string Text)> Card);

/// <summary>How well one contender did.</summary>
/// <param name="Contender">What it is, in words.</param>
/// <param name="Calls">All calls, no-fill calls, ...</param>
/// <param name="Jobs">Jobs tested.</param>
/// <param name="LogLoss">Mean log loss, nats; null: not known.</param>
/// <param name="Top1">First answer right, share; null: not known.</param>
/// <param name="Top3">Right among the first three, share; null: not known.</param>
/// <param name="CalibrationError">Mean gap between odds stated and share come true; null: not known.</param>
public sealed record ScoreRow(string Contender, string Calls, long Jobs, double? LogLoss, double? Top1, double? Top3, double? CalibrationError);
