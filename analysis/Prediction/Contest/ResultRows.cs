namespace PartsSignal.Analysis.Prediction.Contest;

/// <summary>A contender in the validation months: row of <c>prediction_contest</c>.</summary>
public sealed record ContestRow(
    string Contender, string What, DateOnly JudgedFrom, DateOnly JudgedTo, int Jobs, double? LogLoss, double? Brier, double? Top1, double? Top3, double? Top5,
    double? CalibrationError, double? NeverSeen, double Temperature, double? Behind, double? BehindLower, double? BehindUpper, bool Ships);

/// <summary>A figure of the test months with its week-block interval: row of <c>prediction_scores</c>.</summary>
/// <param name="Predictor">shipped, complaint_only, back_off, or shipped_minus_complaint_only and shipped_minus_back_off (paired).</param>
/// <param name="Slice">all, or complaint kind or appliance type as <c>complaint:no_fill</c>, <c>type:washer</c>.</param>
/// <param name="Figure">log_loss (nats), brier, top1, top3, top5, calibration_error, coverage_80, coverage_95.</param>
/// <param name="Jobs">Calls behind it.</param>
/// <param name="Value">The figure; null: none.</param>
/// <param name="Lower">Lower end of the 95 % interval; null: none.</param>
/// <param name="Upper">Upper end; null: none.</param>
/// <param name="Missing">Why there is no interval; null: there is one.</param>
public sealed record ScoreRow(string Predictor, string Slice, string Figure, int Jobs, double? Value, double? Lower, double? Upper, string? Missing);

/// <summary>Said and happened in the test months: row of <c>prediction_reliability</c>.</summary>
public sealed record ReliabilityRow(string Slice, int Bin, double From, double To, int Jobs, double Said, double Happened, double? Lower, double? Upper);

/// <summary>Risk against coverage in the test months: row of <c>prediction_risk_coverage</c>.</summary>
public sealed record RiskRow(string Slice, double Coverage, double Confidence, int Jobs, double Risk);

/// <summary>One test month: row of <c>prediction_by_month</c>.</summary>
public sealed record PredictionMonthRow(
    string Month, int Jobs, double LogLoss, double LogLossComplaintOnly, double LogLossBackOff, double Top1, double Top3,
    double Coverage80, double Coverage95, double MeanSize80, double MeanSize95, double NeverSeen);
