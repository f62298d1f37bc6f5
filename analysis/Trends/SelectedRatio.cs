using PartsSignal.Analysis.Statistics;

namespace PartsSignal.Analysis.Trends;

/// <summary>
/// How large a rise is, given that it is looked at only because it is large. An alarm needs a count of at least L, so the
/// count seen is held against counts of L or more: value and limits are the ratios r at which P(Y &gt;= y | Y &gt;= L, r) is
/// one half, 2.5 % and 97.5 % (conditional inference; Zhong and Prentice 2008, Biostatistics 9). Y is negative binomial with
/// mean r times expected and the baseline's uncertainty. Without this the interval of an alarm misses the truth far more
/// often than stated, always upward.
/// </summary>
internal static class SelectedRatio
{
    private const double Tail = 0.025;
    private const double Largest = 1000;

    /// <summary>The ratio with its 95 % limits; a limit or value below every ratio tried is 0, one above is open.</summary>
    /// <param name="test">The series in its month.</param>
    /// <param name="fewest">Smallest count at which it would have been an alarm; at most the count seen.</param>
    public static Estimate From(SeriesTest test, long fewest)
    {
        double At(double chance) => Solve(test, Math.Min(fewest, test.Observed), chance);
        double upper = At(1 - Tail);
        return Estimate.From(Math.Min(At(0.5), Largest), At(Tail), upper >= Largest ? null : upper);
    }

    // The chance grows with the ratio: larger rises make larger counts, conditionally as well.
    private static double Solve(SeriesTest test, long fewest, double chance)
    {
        double lower = Math.Log(1e-3), upper = Math.Log(Largest);
        if (Chance(test, fewest, Math.Exp(lower)) >= chance)
        {
            return 0;
        }

        for (int i = 0; i < 60; i++)
        {
            double middle = (lower + upper) / 2;
            (lower, upper) = Chance(test, fewest, Math.Exp(middle)) < chance ? (middle, upper) : (lower, middle);
        }

        return Math.Exp((lower + upper) / 2);
    }

    private static double Chance(SeriesTest test, long fewest, double ratio)
    {
        var tail = new PredictiveTail(test.Baseline, test.Exposure * ratio);
        double enough = tail.AtLeast(fewest);
        return enough > 0 ? Math.Min(1, tail.AtLeast(test.Observed) / enough) : 0;
    }
}
