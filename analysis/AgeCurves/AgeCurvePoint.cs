namespace PartsSignal.Analysis.AgeCurves;

/// <summary>One age of one curve, for plotting. Ages in years.</summary>
/// <param name="ApplianceType">For example washer.</param>
/// <param name="Component">For example drain_pump.</param>
/// <param name="ModelFamily">A family, or all.</param>
/// <param name="Basis">register or log_only.</param>
/// <param name="Condition">What the shares are given; null: nothing.</param>
/// <param name="AgeYears">The age.</param>
/// <param name="AtRisk">Appliances at risk at the step that holds at this age; null for log_only.</param>
/// <param name="Failures">Failures up to this age.</param>
/// <param name="ShareFailed">Share failed by this age, 0 to 1.</param>
/// <param name="Lower">Lower end of its 95 % interval.</param>
/// <param name="Upper">Upper end of its 95 % interval.</param>
/// <param name="CumulativeHazard">Expected failures by this age were each replaced by one as old; null for log_only.</param>
/// <param name="FittedShare">Share failed by the fitted Weibull life, under the same condition; null without a fit.</param>
public sealed record AgeCurvePoint(
    string ApplianceType,
    string Component,
    string ModelFamily,
    string Basis,
    string? Condition,
    double AgeYears,
    long? AtRisk,
    long Failures,
    double? ShareFailed,
    double? Lower,
    double? Upper,
    double? CumulativeHazard,
    double? FittedShare);
