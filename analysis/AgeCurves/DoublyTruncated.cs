using PartsSignal.Analysis.Statistics;

namespace PartsSignal.Analysis.AgeCurves;

/// <summary>One age of a doubly truncated distribution.</summary>
/// <param name="Age">The age.</param>
/// <param name="Failures">Failures at it.</param>
/// <param name="Mass">Share of failures at it, corrected for what the log could not see.</param>
/// <param name="Share">Failed by this age, given failed by the greatest age the log could see.</param>
/// <param name="StandardError">Of Share; null where the log windows do not tell.</param>
public sealed record TruncatedPoint(double Age, long Failures, double Mass, double Share, double? StandardError)
{
    /// <summary>95 % interval of the share on the log(-log) scale; null at 0 and 1 and without a standard error.</summary>
    internal (double Lower, double Upper)? Interval => Interval95.LogLog(Share, StandardError);
}

/// <summary>The distribution of ages at failure behind a log, or why it is not there.</summary>
/// <param name="Points">Ages ascending; empty when missing.</param>
/// <param name="Missing">Why there is no estimate; null when there is one.</param>
/// <param name="From">Shares are given that it fails at this age or later.</param>
/// <param name="Until">Shares are given that it fails by this age.</param>
/// <param name="LeftOut">Failures at ages that cannot be compared with the rest; only by <see cref="DoublyTruncated.EstimateComparable"/>.</param>
public sealed record TruncatedDistribution(IReadOnlyList<TruncatedPoint> Points, string? Missing, double From = 0, double Until = 0, int LeftOut = 0)
{
    /// <summary>Failures with a fault, each with its place in the input and the reason; none of them is counted.</summary>
    public IReadOnlyList<BadRow> Rejected { get; internal init; } = [];
}

/// <summary>
/// Nonparametric maximum likelihood for ages seen only between the ages an appliance had when the log began and when
/// it was closed (Efron and Petrosian 1999): f_j = n_j / sum_i (J_ij / F_i), F_i = sum_j J_ij f_j, repeated until it
/// stands still, with squared extrapolation (Varadhan and Roland 2008). Unique only if every age can be reached
/// from every other through the log windows (Xiao and Hudgens 2019); otherwise nothing is given.
/// </summary>
public static class DoublyTruncated
{
    private const int MostRounds = 2_000;
    private const double Still = 1e-9;
    private const double MostLeftOut = 0.1;

    /// <summary>Estimates the distribution. Failures with a fault are left out and listed as rejected.</summary>
    public static TruncatedDistribution Estimate(IReadOnlyList<TruncatedAge> failures)
    {
        (IReadOnlyList<TruncatedAge> good, IReadOnlyList<BadRow> bad) = BadRow.Split(failures, f => f.Fault());
        return FromGood(good) with { Rejected = bad };
    }

    private static TruncatedDistribution FromGood(IReadOnlyList<TruncatedAge> failures)
    {
        if (failures.Count == 0)
        {
            return new TruncatedDistribution([], "nothing has failed yet");
        }

        var windows = LogWindows.From(failures);
        if (!windows.Connected())
        {
            return new TruncatedDistribution([], "the log windows do not overlap enough: ages fall apart into groups that cannot be compared");
        }

        if (failures.All(f => f.Earliest == 0) && ClosedForm(failures) is { } closed && closed.Length == windows.Ages.Count)
        {
            return new TruncatedDistribution(Points(windows, closed), null, 0, failures.Max(f => f.Latest));
        }

        double[] mass = new double[windows.Ages.Count];
        for (int j = 0; j < mass.Length; j++)
        {
            mass[j] = (double)windows.Counts[j] / failures.Count;
        }

        return Settle(windows, ref mass)
            ? new TruncatedDistribution(Points(windows, mass), null, failures.Min(f => f.Earliest), failures.Max(f => f.Latest))
            : new TruncatedDistribution([], "the estimate did not settle");
    }

    /// <summary>
    /// Estimates the distribution over the ages that can be compared with the middle one. Ages at the ends that no other
    /// log window reaches are left out, and the shares are given that it fails between the ages that are left. Nothing is
    /// given when a tenth or more would have to go. Failures with a fault are left out and listed as rejected.
    /// </summary>
    public static TruncatedDistribution EstimateComparable(IReadOnlyList<TruncatedAge> failures)
    {
        (IReadOnlyList<TruncatedAge> good, IReadOnlyList<BadRow> bad) = BadRow.Split(failures, f => f.Fault());
        return ComparableOfGood(good) with { Rejected = bad };
    }

    private static TruncatedDistribution ComparableOfGood(IReadOnlyList<TruncatedAge> failures)
    {
        IReadOnlyList<TruncatedAge> kept = failures;
        while (kept.Count > 0 && kept.Count > (1 - MostLeftOut) * failures.Count)
        {
            var windows = LogWindows.From(kept);
            if (windows.Connected())
            {
                TruncatedDistribution found = FromGood(kept);
                return found with { LeftOut = failures.Count - kept.Count };
            }

            (int first, int last) = windows.Middle();
            double from = first == 0 ? 0 : windows.Ages[first];
            double until = last == windows.Ages.Count - 1 ? double.MaxValue : windows.Ages[last];
            IReadOnlyList<TruncatedAge> inside = [.. kept.Where(f => f.Age >= from && f.Age <= until)
                .Select(f => f with { Earliest = Math.Max(f.Earliest, from), Latest = Math.Min(f.Latest, until) })];
            if (inside.Count == kept.Count)
            {
                break;
            }

            kept = inside;
        }

        return FromGood(kept.Count == failures.Count ? failures : []) is { Missing: null } whole ? whole
            : new TruncatedDistribution([], "the log windows do not overlap enough: ages fall apart into groups that cannot be compared");
    }

    // Everything was made after the log began: the product limit in reversed time is the maximum.
    private static double[] ClosedForm(IReadOnlyList<TruncatedAge> failures)
    {
        IReadOnlyList<ConditionalPoint> points = ReverseTime.Estimate([.. failures.Select(f => new RightTruncatedAge(f.Age, f.Latest))]);
        return [.. points.Select((p, j) => j == 0 ? p.Share : p.Share - points[j - 1].Share)];
    }

    private static bool Settle(LogWindows windows, ref double[] mass)
    {
        for (int round = 0; round < MostRounds; round++)
        {
            double[] once = windows.Next(mass);
            double[] twice = windows.Next(once);
            double first = 0;
            double second = 0;
            for (int j = 0; j < mass.Length; j++)
            {
                first += Square(once[j] - mass[j]);
                second += Square(twice[j] - 2 * once[j] + mass[j]);
            }

            if (Math.Sqrt(first) < Still)
            {
                mass = twice;
                return true;
            }

            mass = second > 0 ? Extrapolate(mass, once, twice, -Math.Max(1, Math.Sqrt(first / second))) ?? twice : twice;
        }

        return false;
    }

    private static double[]? Extrapolate(double[] from, double[] once, double[] twice, double length)
    {
        double[] far = new double[from.Length];
        double total = 0;
        for (int j = 0; j < far.Length; j++)
        {
            far[j] = from[j] - 2 * length * (once[j] - from[j]) + length * length * (twice[j] - 2 * once[j] + from[j]);
            if (!(far[j] > 0))
            {
                return null;
            }

            total += far[j];
        }

        for (int j = 0; j < far.Length; j++)
        {
            far[j] /= total;
        }

        return far;
    }

    private static List<TruncatedPoint> Points(LogWindows windows, double[] mass)
    {
        var points = new List<TruncatedPoint>(mass.Length);
        double[] errors = TruncatedVariance.StandardErrors(windows, mass);
        double share = 0;
        for (int j = 0; j < mass.Length; j++)
        {
            share += mass[j];
            points.Add(new TruncatedPoint(
                windows.Ages[j], windows.Counts[j], mass[j], j == mass.Length - 1 ? 1 : Math.Min(1, share), errors.Length == 0 ? null : errors[j]));
        }

        return points;
    }

    private static double Square(double x) => x * x;
}
