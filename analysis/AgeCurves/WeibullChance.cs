using PartsSignal.Analysis.Statistics;

namespace PartsSignal.Analysis.AgeCurves;

/// <summary>Chance that one still working at an age fails within a horizon, with its interval.</summary>
public static class WeibullChance
{
    /// <summary>
    /// 1 - exp(-D) with D = H(age + horizon) - H(age); the interval is normal on log D by the delta method.
    /// </summary>
    /// <param name="fit">A fit.</param>
    /// <param name="age">Age reached, 0 or more.</param>
    /// <param name="horizon">Time ahead, above 0, in the unit of the ages.</param>
    public static Estimate Within(WeibullFit fit, double age, double horizon)
    {
        if (fit is not { Life: { } life, Covariance: { } covariance })
        {
            return Estimate.None(fit.Missing ?? "no fit");
        }

        double later = life.CumulativeHazard(age + horizon);
        double now = life.CumulativeHazard(age);
        double expected = later - now;
        if (!(expected > 0))
        {
            return Estimate.None("the chance is too small to tell from nought");
        }

        double byShape = (LogHazardByShape(life, age + horizon) * later - LogHazardByShape(life, age) * now) / expected;
        double error = Math.Sqrt(Math.Max(0,
            byShape * byShape * covariance.Shape - 2 * byShape * life.Shape * covariance.Both + life.Shape * life.Shape * covariance.Scale));
        double width = Math.Exp(Interval95.Z * error);
        double upper = Failing(expected * width);
        return Estimate.Of(Failing(expected), Failing(expected / width), double.IsFinite(upper) ? upper : 1);
    }

    private static double LogHazardByShape(WeibullLife life, double age) => age <= 0 ? 0 : life.Shape * Math.Log(age / life.Scale);

    private static double Failing(double expected) => -WeibullLife.Expm1(-expected);
}
