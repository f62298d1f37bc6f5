namespace PartsSignal.Analysis.AgeCurves;

/// <summary>A right-truncated failure: observed only because it happened before the cut-off date.</summary>
/// <param name="Age">Age at failure.</param>
/// <param name="Latest">Age the appliance had, or would have had, at the cut-off date; at least Age.</param>
internal readonly record struct RightTruncatedAge(double Age, double Latest);

/// <summary>One step of a conditional distribution of ages at failure.</summary>
/// <param name="Age">The age.</param>
/// <param name="AtRisk">Failures with Age &lt;= this age &lt;= Latest.</param>
/// <param name="Failures">Failures at this age.</param>
/// <param name="Share">Failed by this age, given failed by the greatest age seen.</param>
/// <param name="Lower">Lower end of the 95 % interval; null when there is none.</param>
/// <param name="Upper">Upper end of the 95 % interval; null when there is none.</param>
internal sealed record ConditionalPoint(double Age, long AtRisk, long Failures, double Share, double? Lower, double? Upper);

/// <summary>
/// Ages at failure of appliances made after the log began: the product limit in reversed time
/// F(t)/F(tau) = product over ages u &gt; t of (1 - d(u)/#{age &lt;= u &lt;= latest}) (Lagakos, Barraj and De Gruttola 1988;
/// Kalbfleisch and Lawless 1989). F itself is not identified: read "given that it fails by age tau".
/// </summary>
internal static class ReverseTime
{
    /// <summary>Estimates the conditional distribution, ages ascending.</summary>
    /// <exception cref="ArgumentException">An age lies beyond its truncation.</exception>
    public static IReadOnlyList<ConditionalPoint> Estimate(IReadOnlyList<RightTruncatedAge> failures)
    {
        TiedAges ties = TiedAges.Among(failures.SelectMany(f => new[] { f.Age, f.Latest }));
        RightTruncatedAge[] snapped = [.. failures.Select(f => new RightTruncatedAge(ties.Snap(f.Age), ties.Snap(f.Latest)))];
        if (snapped.Any(f => !(f.Age <= f.Latest)))
        {
            throw new ArgumentException("A failure lies beyond its truncation age.", nameof(failures));
        }

        (double Age, long Count)[] steps = [.. snapped.GroupBy(f => f.Age).Select(g => (g.Key, g.LongCount())).OrderByDescending(s => s.Key)];
        double[] ages = [.. snapped.Select(f => f.Age).Order()];
        double[] latest = [.. snapped.Select(f => f.Latest).Order()];
        var points = new List<ConditionalPoint>();
        double share = 1;
        double greenwood = 0;
        foreach ((double age, long count) in steps)
        {
            long atRisk = CountBelow(ages, age, true) - CountBelow(latest, age, false);
            (double Lower, double Upper)? interval = greenwood > 0 ? Interval95.LogLog(share, share * Math.Sqrt(greenwood)) : null;
            points.Add(new ConditionalPoint(age, atRisk, count, share, interval?.Lower, interval?.Upper));
            long rest = atRisk - count;
            share *= (double)rest / atRisk;
            greenwood += rest == 0 ? 0 : count / ((double)atRisk * rest);
        }

        points.Reverse();
        return points;
    }

    private static int CountBelow(double[] sorted, double value, bool inclusive)
    {
        int low = 0;
        int high = sorted.Length;
        while (low < high)
        {
            int middle = (low + high) / 2;
            bool below = inclusive ? sorted[middle] <= value : sorted[middle] < value;
            (low, high) = below ? (middle + 1, high) : (low, middle);
        }

        return low;
    }
}
