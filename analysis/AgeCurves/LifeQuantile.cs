namespace PartsSignal.Analysis.AgeCurves;

/// <summary>The age by which a given share has failed.</summary>
/// <param name="Age">The age; null when the curve does not come so far down.</param>
/// <param name="Lower">Lower end of the 95 % interval; null when open.</param>
/// <param name="Upper">Upper end of the 95 % interval; null when open.</param>
/// <param name="Missing">Why there is no age; null when there is one.</param>
public sealed record LifeQuantile(double? Age, double? Lower, double? Upper, string? Missing)
{
    private const double Rounding = 1e-9;

    /// <summary>The age by which half have failed.</summary>
    public static LifeQuantile Median(KaplanMeier curve) => From(curve, 0.5);

    /// <summary>
    /// Reads the age off the curve, and the interval off the curve's interval (Brookmeyer and Crowley 1982). A curve
    /// that is level at the wanted share gives the middle of the level piece.
    /// </summary>
    /// <param name="curve">A survival curve.</param>
    /// <param name="working">Share still working, between 0 and 1.</param>
    public static LifeQuantile From(KaplanMeier curve, double working)
    {
        double? age = Crossing(curve.Points, p => p.Survival, working);
        string? missing = age is not null ? null
            : curve.Points.Count == 0 ? "nothing has failed yet"
            : "not reached: too many are still working";
        return new LifeQuantile(age, Crossing(curve.Points, p => p.Lower, working), age is null ? null : Crossing(curve.Points, p => p.Upper, working), missing);
    }

    private static double? Crossing(IReadOnlyList<SurvivalPoint> points, Func<SurvivalPoint, double?> height, double level)
    {
        for (int i = 0; i < points.Count; i++)
        {
            if (height(points[i]) is not { } h || h > level + Rounding)
            {
                continue;
            }

            return Math.Abs(h - level) <= Rounding && i + 1 < points.Count ? (points[i].Age + points[i + 1].Age) / 2 : points[i].Age;
        }

        return null;
    }
}
