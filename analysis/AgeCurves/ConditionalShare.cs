namespace PartsSignal.Analysis.AgeCurves;

/// <summary>Share failed by an age, given failed by a later one, from a fitted life.</summary>
/// <param name="Value">The share, 0 to 1.</param>
/// <param name="Lower">Lower end of its 95 % interval, by the delta method on the log odds; null at 0 and 1.</param>
/// <param name="Upper">Upper end of its 95 % interval; null at 0 and 1.</param>
internal sealed record ConditionalShare(double Value, double? Lower, double? Upper)
{
    private const double Step = 1e-4;

    /// <summary>The share and its interval.</summary>
    public static ConditionalShare From(WeibullFit fit, double age, double latest)
    {
        WeibullLife life = fit.Life!;
        double value = Value01(life, age, latest);
        if (value is <= 0 or >= 1)
        {
            return new ConditionalShare(Math.Clamp(value, 0, 1), null, null);
        }

        double byShape = (LogOdds(life, Step, 0, age, latest) - LogOdds(life, -Step, 0, age, latest)) / (2 * Step);
        double byScale = (LogOdds(life, 0, Step, age, latest) - LogOdds(life, 0, -Step, age, latest)) / (2 * Step);
        LogCovariance covariance = fit.Covariance!;
        double error = Math.Sqrt(Math.Max(0,
            byShape * byShape * covariance.Shape + 2 * byShape * byScale * covariance.Both + byScale * byScale * covariance.Scale));
        double odds = Math.Log(value / (1 - value));
        return new ConditionalShare(value, Share(odds - Interval95.Z * error), Share(odds + Interval95.Z * error));
    }

    /// <summary>F(age)/F(latest).</summary>
    public static double Value01(WeibullLife life, double age, double latest) =>
        Math.Min(1, WeibullLife.Expm1(-life.CumulativeHazard(Math.Min(age, latest))) / WeibullLife.Expm1(-life.CumulativeHazard(latest)));

    private static double LogOdds(WeibullLife life, double logShape, double logScale, double age, double latest)
    {
        double share = Value01(new WeibullLife(life.Shape * Math.Exp(logShape), life.Scale * Math.Exp(logScale)), age, latest);
        return Math.Log(share / (1 - share));
    }

    private static double Share(double odds) => 1 / (1 + Math.Exp(-odds));
}
