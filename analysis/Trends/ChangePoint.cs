using PartsSignal.Analysis.Statistics.Numerics;

namespace PartsSignal.Analysis.Trends;

/// <summary>When a rate changed, and how sure that is.</summary>
/// <param name="LastBefore">Most likely last period of the old rate, from 0.</param>
/// <param name="Posterior">Chance of each period but the last being that one, given one change.</param>
/// <param name="RateBefore">Events per exposure up to it.</param>
/// <param name="RateAfter">Events per exposure after it.</param>
/// <param name="LogBayesFactor">Log of how much better one change explains the counts than none; above 3: strong.</param>
/// <param name="LikelihoodRatio">Twice the largest log likelihood gain. Not chi-square: it was searched for.</param>
internal sealed record ChangePoint(
    int LastBefore, IReadOnlyList<double> Posterior, double RateBefore, double RateAfter, double LogBayesFactor, double LikelihoodRatio)
{
    /// <summary>
    /// One change of a Poisson rate, gamma priors on both rates, every period equally likely beforehand (Raftery and
    /// Akman 1986). Null for fewer than two periods.
    /// </summary>
    /// <param name="periods">Count and exposure of each period; exposures above 0.</param>
    /// <param name="shape">Shape of the prior of a rate.</param>
    /// <param name="rate">Rate of the prior of a rate, in exposure.</param>
    public static ChangePoint? Find(IReadOnlyList<(double Count, double Exposure)> periods, double shape = 0.5, double rate = 0.25)
    {
        int n = periods.Count;
        if (n < 2)
        {
            return null;
        }

        double allCount = periods.Sum(p => p.Count);
        double allExposure = periods.Sum(p => p.Exposure);
        double none = LogMarginal(allCount, allExposure, shape, rate);
        double[] log = new double[n - 1];
        double[] gain = new double[n - 1];
        double count = 0;
        double exposure = 0;
        for (int t = 0; t < n - 1; t++)
        {
            count += periods[t].Count;
            exposure += periods[t].Exposure;
            log[t] = LogMarginal(count, exposure, shape, rate) + LogMarginal(allCount - count, allExposure - exposure, shape, rate);
            gain[t] = 2 * (Peak(count, exposure) + Peak(allCount - count, allExposure - exposure) - Peak(allCount, allExposure));
        }

        double top = log.Max();
        double total = log.Sum(l => Math.Exp(l - top));
        int mode = Array.IndexOf(log, top);
        double before = periods.Take(mode + 1).Sum(p => p.Count);
        double beforeExposure = periods.Take(mode + 1).Sum(p => p.Exposure);
        return new ChangePoint(
            mode,
            [.. log.Select(l => Math.Exp(l - top) / total)],
            before / beforeExposure,
            (allCount - before) / (allExposure - beforeExposure),
            top + Math.Log(total / (n - 1)) - none,
            gain.Max());
    }

    private static double LogMarginal(double count, double exposure, double shape, double rate) =>
        GammaFunction.Log(shape + count) - GammaFunction.Log(shape) + shape * Math.Log(rate) - (shape + count) * Math.Log(rate + exposure);

    private static double Peak(double count, double exposure) => count > 0 ? count * Math.Log(count / exposure) - count : 0;
}
