using PartsSignal.Analysis.Statistics;
using PartsSignal.Analysis.Statistics.Distributions;

namespace PartsSignal.Analysis.AgeCurves;

/// <summary>One curve in figures. Ages in years; intervals 95 %.</summary>
/// <param name="ApplianceType">For example washer.</param>
/// <param name="Component">For example drain_pump.</param>
/// <param name="ModelFamily">A family, or all.</param>
/// <param name="Basis">register or log_only.</param>
/// <param name="Condition">What the shares are given, or null if nothing.</param>
/// <param name="Units">Appliances the curve rests on (log_only: those that failed).</param>
/// <param name="Failures">Failures counted: register: the first of each unit; log_only: the first that the shop was called to, which need not be the unit's first.</param>
/// <param name="MedianYears">Age by which half have failed; null with a reason, always for log_only.</param>
/// <param name="MedianLower">Its lower end.</param>
/// <param name="MedianUpper">Its upper end, or null if open.</param>
/// <param name="MedianMissing">Why there is no median.</param>
/// <param name="MeanYears">Mean working life within the horizon.</param>
/// <param name="MeanHorizon">The horizon: last age with five at risk.</param>
/// <param name="Shape">Weibull shape: below 1 early failures, above 1 wear. Register: by the part's own time in service, one shape for the families of a type (<see cref="PartLife"/>); log_only: by the age at the first failure that the shop was called to.</param>
/// <param name="ShapeLower">Its lower end.</param>
/// <param name="ShapeUpper">Its upper end.</param>
/// <param name="Nature">early, chance, wear or unclear, by the shape's interval; null without a fit.</param>
/// <param name="FitMissing">Why there is no fit.</param>
/// <param name="OthersP">Chance of so large a difference from the type's other families if all failed alike (log-rank); null where not compared.</param>
/// <param name="OthersRatio">Failures over those expected if all families of the type failed alike; null where not compared.</param>
/// <param name="CurveMissing">Why there is no curve; null when there is one.</param>
public sealed record AgeCurveSummary(
    string ApplianceType,
    string Component,
    string ModelFamily,
    string Basis,
    string? Condition,
    long Units,
    long Failures,
    double? MedianYears,
    double? MedianLower,
    double? MedianUpper,
    string? MedianMissing,
    double? MeanYears,
    double? MeanHorizon,
    double? Shape,
    double? ShapeLower,
    double? ShapeUpper,
    string? Nature,
    string? FitMissing,
    double? OthersP,
    double? OthersRatio,
    string? CurveMissing)
{
    /// <summary>Lower end of the 95 % interval of <see cref="OthersRatio"/>, by the log-rank test (test-based: Miettinen 1976); null where not compared or alike.</summary>
    public double? OthersLower { get; init; }

    /// <summary>Its upper end.</summary>
    public double? OthersUpper { get; init; }

    /// <summary>A ratio r whose difference from 1 has the chance p: r^(1 -+ 1.96 / z), with z the normal quantile of p.</summary>
    internal static (double Lower, double Upper)? TestBased(double ratio, double p)
    {
        double z = p is > 0 and < 0.99 ? -NormalDistribution.Quantile(p / 2) : 0;
        return z > 0 && ratio > 0
            ? (Math.Exp(Math.Log(ratio) - (Interval95.Z / z * Math.Abs(Math.Log(ratio)))), Math.Exp(Math.Log(ratio) + (Interval95.Z / z * Math.Abs(Math.Log(ratio)))))
            : null;
    }

    /// <summary>What a shape's interval says of a failure's nature.</summary>
    internal static string? NatureOf(Estimate shape) =>
        shape.Value is null ? null
        : shape.Upper < 1 ? "early"
        : shape.Lower > 1 ? "wear"
        : shape is { Lower: > 0.7, Upper: < 1.4 } ? "chance"
        : "unclear";
}

/// <summary>One age of one curve, for plotting. Ages in years.</summary>
/// <param name="ApplianceType">For example washer.</param>
/// <param name="Component">For example drain_pump.</param>
/// <param name="ModelFamily">A family, or all.</param>
/// <param name="Basis">register or log_only.</param>
/// <param name="Condition">What the shares are given, or null if nothing.</param>
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
