namespace PartsSignal.Analysis.AgeCurves;

/// <summary>
/// Failures per year in one year of age, read from it and up to two years either side, nearer ones counting more, along a
/// straight line in the log of the rate (local likelihood: Tibshirani and Hastie 1987). The line keeps the first years from
/// being judged by the years after them, when parts wear out. A slope of one log unit a year is held to be ordinary,
/// which keeps few failures from drawing a steep line. The first year is judged by itself and the next two by a year either
/// side: while parts begin to wear, no straight line reaches further.
/// </summary>
/// <param name="Rate">Failures per year; half a failure is supposed where none was seen.</param>
/// <param name="LogError">Standard error of its log.</param>
internal sealed record LocalRate(double Rate, double LogError)
{
    private const double OrdinarySlope = 1;
    private const int MostSteps = 50;

    /// <summary>Years from an age that count for it, itself among them.</summary>
    public static IEnumerable<int> Around(int age) =>
        age == 0 ? [0] : age < 3 ? [-1, 0, 1] : [-2, -1, 0, 1, 2];

    /// <summary>The rate at the middle of the ages given; null without a watched year.</summary>
    /// <param name="ages">Years of age from the one asked for, failures and watched years of each.</param>
    public static LocalRate? Fit(IReadOnlyList<(int From, long Failures, double Years)> ages)
    {
        double[] weights = Weights(ages);
        double years = ages.Select((a, i) => weights[i] * a.Years).Sum(), failures = ages.Select((a, i) => weights[i] * a.Failures).Sum();
        if (!(years > 0))
        {
            return null;
        }

        if (!(failures > 0))
        {
            return new LocalRate(0.5 / years, Math.Sqrt(2));
        }

        double level = Math.Log(failures / years), slope = 0;
        for (int step = 0; step < MostSteps; step++)
        {
            (double g0, double g1, double a00, double a01, double a11) = Slopes(ages, weights, level, slope);
            double determinant = (a00 * a11) - (a01 * a01);
            double up = ((a11 * g0) - (a01 * g1)) / determinant, tilt = ((a00 * g1) - (a01 * g0)) / determinant;
            double factor = Math.Min(1, 1 / Math.Max(Math.Abs(up), Math.Abs(tilt)));
            level += factor * up;
            slope += factor * tilt;
            if (Math.Abs(up) + Math.Abs(tilt) < 1e-10)
            {
                break;
            }
        }

        return new LocalRate(Math.Exp(level), Error(ages, weights, level, slope));
    }

    private static double[] Weights(IReadOnlyList<(int From, long Failures, double Years)> ages)
    {
        int reach = ages.Max(a => Math.Abs(a.From));
        return [.. ages.Select(a => 1 - (Math.Abs(a.From) / (reach + 1.0)))];
    }

    private static (double G0, double G1, double A00, double A01, double A11) Slopes(
        IReadOnlyList<(int From, long Failures, double Years)> ages, double[] weights, double level, double slope)
    {
        double g0 = 0, g1 = -slope / (OrdinarySlope * OrdinarySlope), a00 = 0, a01 = 0, a11 = 1 / (OrdinarySlope * OrdinarySlope);
        for (int i = 0; i < weights.Length; i++)
        {
            (int from, long failures, double years) = ages[i];
            double weight = weights[i], mean = years * Math.Exp(level + (slope * from));
            g0 += weight * (failures - mean);
            g1 += weight * from * (failures - mean);
            a00 += weight * mean;
            a01 += weight * from * mean;
            a11 += weight * from * from * mean;
        }

        return (g0, g1, a00, a01, a11);
    }

    // A^-1 B A^-1: the weights are no counts, so the curvature alone would not do.
    private static double Error(IReadOnlyList<(int From, long Failures, double Years)> ages, double[] weights, double level, double slope)
    {
        (_, _, double a00, double a01, double a11) = Slopes(ages, weights, level, slope);
        double determinant = (a00 * a11) - (a01 * a01), first = a11 / determinant, second = -a01 / determinant;
        return Math.Sqrt(ages.Select((a, i) =>
        {
            double pull = weights[i] * (first + (second * a.From));
            return pull * pull * a.Years * Math.Exp(level + (slope * a.From));
        }).Sum());
    }
}
