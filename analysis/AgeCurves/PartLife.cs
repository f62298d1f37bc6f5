using PartsSignal.Analysis.Statistics;
using PartsSignal.Analysis.Statistics.Numerics;

namespace PartsSignal.Analysis.AgeCurves;

/// <summary>
/// How the failures of a component come with its own time in service, in families that differ: every family has the same
/// Weibull shape and a rate of its own. Families mixed into one fit would look flatter than any of them: those that fail
/// often do so young, and the old are left with those that seldom do.
/// </summary>
/// <remarks>
/// The hazard of family f is z_f l b t^(b-1), with shape b and family factors z_f that scatter as a gamma distribution of
/// mean 1 and variance v (shared frailty: Clayton 1978; Vaupel, Manton and Stallard 1979). With d failures of all D in a
/// family and A = sum of t^b over its parts, log L = D log(l b) + (b - 1) sum log t + sum over families of
/// [sum of log(1 + j v) over 0 &lt; j &lt; d - (1/v + d) log(1 + v l A)]; intervals by profile likelihood (Jeng and
/// Meeker 2000). Time counts in service, not by the age of the machine: a machine that has had the part replaced is old with
/// a young part, and a fit by machine age levels out with every replacement.
/// </remarks>
internal sealed class PartLife
{
    private const double Widest = 3;
    private const double LeastLogVariance = -7;
    private const double MostLogVariance = 2.5;

    private readonly PartService[] _families;
    private readonly double _failures;
    private readonly double _sumLogTimes;
    private readonly double _unit;

    private PartLife(PartService[] families)
    {
        _families = families;
        _failures = families.Sum(f => f.Failures);
        _unit = families.Sum(f => f.Ends.Sum(e => e.Parts * e.Time)) / families.Sum(f => f.Ends.Sum(e => e.Parts));
        _sumLogTimes = families.Sum(f => f.Ends.Sum(e => e.Failures * Math.Log(e.Time / _unit)));
    }

    /// <summary>The shape with its 95 % profile interval; missing with a reason.</summary>
    public static Estimate Shape(IReadOnlyList<PartService> families)
    {
        PartService[] used = [.. families.Where(f => f.Ends.Count > 0)];
        long failures = used.Sum(f => f.Failures);
        return failures < WeibullFit.FewestFailures
            ? Estimate.None(failures == 0 ? "no part that we saw put in use has failed" : $"fewer than {WeibullFit.FewestFailures} failures of parts that we saw put in use")
            : used.SelectMany(f => f.Ends).Where(e => e.Failures > 0).Select(e => e.Time).Distinct().Count() < 2
            ? Estimate.None("all failures are at one age: the shape is not identified")
            : new PartLife(used).Estimated();
    }

    private Estimate Estimated()
    {
        double at = GoldenSection.Minimize(b => -Best(b), -Widest, Widest, steps: 22);
        double top = Best(at);
        double Loss(double logShape) => top - Best(logShape) - WeibullProfile.AllowedLoss;

        // An end is where the likelihood has fallen as far as it may; none where it never does.
        double? End(double outside) => Loss(outside) <= 0 ? null : RootFinder.Find(Loss, at, outside, tolerance: 1e-4);
        return Estimate.From(Math.Exp(at), End(-Widest) is { } low ? Math.Exp(low) : null, End(Widest) is { } high ? Math.Exp(high) : null);
    }

    // Highest log likelihood at a log shape, whatever the rate and the scatter of the families.
    private double Best(double logShape)
    {
        double shape = Math.Exp(logShape);
        double[] sums = [.. _families.Select(f => f.Ends.Sum(e => e.Parts * Math.Pow(e.Time / _unit, shape)))];
        double At(double logVariance) => LogLikelihood(shape, sums, BestRate(sums, Math.Exp(-logVariance)), Math.Exp(-logVariance));
        return At(GoldenSection.Minimize(v => -At(v), LeastLogVariance, MostLogVariance, steps: 13));
    }

    // The rate at which the likelihood is highest: failures / rate = sum of (a + d) A / (a + rate A), falling in the rate.
    private double BestRate(double[] sums, double a)
    {
        double low = 0, high = double.PositiveInfinity;
        double rate = _failures / sums.Sum();
        for (int step = 0; step < 100; step++)
        {
            double excess = _failures, slope = 0;
            for (int f = 0; f < sums.Length; f++)
            {
                double part = (a + _families[f].Failures) * sums[f] / (a + (rate * sums[f]));
                excess -= rate * part;
                slope -= part * a / (a + (rate * sums[f]));
            }

            (low, high) = excess > 0 ? (rate, high) : (low, rate);
            double next = rate - (excess / slope);
            next = next > low && next < high ? next : double.IsInfinity(high) ? 2 * rate : 0.5 * (low + high);
            if (Math.Abs(next - rate) <= 1e-9 * rate)
            {
                return next;
            }

            rate = next;
        }

        return rate;
    }

    private double LogLikelihood(double shape, double[] sums, double rate, double a)
    {
        double log = (_failures * Math.Log(rate * shape)) + ((shape - 1) * _sumLogTimes);
        for (int f = 0; f < sums.Length; f++)
        {
            long failed = _families[f].Failures;
            log -= (failed + a) * Math.Log(1 + (rate * sums[f] / a));
            for (long j = 1; j < failed; j++)
            {
                log += Math.Log(1 + (j / a));
            }
        }

        return log;
    }
}
