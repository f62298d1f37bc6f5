namespace PartsSignal.Analysis.Trends;

/// <summary>
/// How large a rise is at least, given that it is looked at only because it is large. An alarm needs a count of at least L,
/// so the count y seen is held against counts of L or more: the bound is the ratio r at which P(Y &gt;= y | Y &gt;= L, r) is
/// 2.5 % (conditional inference; Zhong and Prentice 2008, Biostatistics 9). Y is negative binomial with mean r times
/// expected and the baseline's uncertainty. An interval that ignores the selection misses the truth far more often than
/// stated, always upward. A count that just reaches L says that there is a rise, not how large it is.
/// </summary>
internal static class SelectedRatio
{
    private const double Tail = 0.025;
    private const double Largest = 1000;

    /// <summary>The bound, or null if it is not above 1: the size cannot be told.</summary>
    /// <param name="test">The series in its month.</param>
    /// <param name="fewest">Smallest count at which it would have been an alarm; at most the count seen.</param>
    public static double? AtLeast(SeriesTest test, long fewest)
    {
        long needed = Math.Min(fewest, test.Observed);
        if (Chance(test, needed, 1) >= Tail)
        {
            return null;
        }

        // The chance grows with the ratio: larger rises make larger counts, conditionally as well.
        double lower = 0, upper = Math.Log(Largest);
        for (int i = 0; i < 50; i++)
        {
            double middle = (lower + upper) / 2;
            (lower, upper) = Chance(test, needed, Math.Exp(middle)) < Tail ? (middle, upper) : (lower, middle);
        }

        return Math.Exp(lower);
    }

    private static double Chance(SeriesTest test, long fewest, double ratio)
    {
        var tail = new PredictiveTail(test.Baseline, test.Exposure * ratio);
        double enough = tail.AtLeast(fewest);
        return enough > 0 ? Math.Min(1, tail.AtLeast(test.Observed) / enough) : 0;
    }
}
