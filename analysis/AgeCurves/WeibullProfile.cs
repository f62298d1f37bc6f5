using PartsSignal.Analysis.Statistics.Numerics;

namespace PartsSignal.Analysis.AgeCurves;

/// <summary>
/// Profile-likelihood intervals: the values at which twice the loss of log likelihood, the other parameter refitted,
/// reaches 3.84, the 0.95 quantile of chi-square with 1 degree. Better than a standard error for few failures
/// (Jeng and Meeker 2000).
/// </summary>
internal static class WeibullProfile
{
    /// <summary>Log likelihood that an interval of 0.95 may lose: half the quantile of chi-square with 1 degree.</summary>
    public const double AllowedLoss = 3.841458820694124 / 2;

    private const double Widest = 8;
    private const double OutOfReach = 10;

    /// <summary>Interval of the log shape, or of the log scale; an end is null where the likelihood never falls so far.</summary>
    public static (double? Lower, double? Upper) Interval(WeibullTerms terms, Peak peak, bool ofShape)
    {
        double step = 0.25 * Math.Clamp(Error(peak, ofShape), 1e-4, 4);
        return (End(terms, peak, ofShape, -step), End(terms, peak, ofShape, step));
    }

    private static double Error(Peak peak, bool ofShape)
    {
        double determinant = peak.At.ByShapeShape * peak.At.ByScaleScale - peak.At.ByShapeScale * peak.At.ByShapeScale;
        double variance = -(ofShape ? peak.At.ByScaleScale : peak.At.ByShapeShape) / determinant;
        return variance > 0 ? Math.Sqrt(variance) : 1;
    }

    private static double? End(WeibullTerms terms, Peak peak, bool ofShape, double step)
    {
        double inside = ofShape ? peak.LogShape : peak.LogScale;
        double top = inside;
        Peak best = peak;
        double outside = inside;
        while (true)
        {
            outside += step;
            step *= 1.6;
            if (Math.Abs(outside - top) > Widest)
            {
                return null;
            }

            Peak? at = At(terms, best, ofShape, outside);
            if (at is null || peak.At.Value - at.At.Value > AllowedLoss)
            {
                break;
            }

            (inside, best) = (outside, at);
        }

        double Excess(double value) => At(terms, best, ofShape, value) is { } at ? peak.At.Value - at.At.Value - AllowedLoss : OutOfReach;
        return RootFinder.Find(Excess, inside, outside, tolerance: 1e-7) ?? inside;
    }

    private static Peak? At(WeibullTerms terms, Peak near, bool ofShape, double value) => ofShape
        ? WeibullMaximum.Find(terms, value, near.LogScale, shapeFixed: true)
        : WeibullMaximum.Find(terms, near.LogShape, value, scaleFixed: true);
}
