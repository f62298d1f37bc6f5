using PartsSignal.Analysis.Statistics.Numerics;

namespace PartsSignal.Analysis.Statistics.Distributions;

/// <summary>Number of successes in so many independent trials.</summary>
/// <param name="Trials">0 or more.</param>
/// <param name="P">Chance of success, 0 to 1.</param>
internal sealed record BinomialDistribution(long Trials, double P)
{
    /// <summary>P(X = k).</summary>
    public double Pmf(long k)
    {
        if (k < 0 || k > Trials)
        {
            return 0;
        }

        if (P is 0 or 1)
        {
            return (P == 0 ? k == 0 : k == Trials) ? 1 : 0;
        }

        if (k == 0 || k == Trials)
        {
            return Math.Exp(Trials * (k == 0 ? LogOneMinusP : Math.Log(P)));
        }

        // b(k; n, p) as in Loader (2000); x^a y^b / B(a, b) carries the factor a b / (a + b).
        double a = k, b = Trials - k;
        return Math.Exp(IncompleteBeta.LogPower(a, b, P, 1 - P)) * ((double)Trials / (a * b));
    }

    /// <summary>P(X &lt;= k).</summary>
    public double Cdf(long k) => k < 0 ? 0 : k >= Trials ? 1 : IncompleteBeta.Lower(Trials - k, k + 1, 1 - P, P);

    /// <summary>P(X &gt; k).</summary>
    public double UpperTail(long k) => k < 0 ? 1 : k >= Trials ? 0 : IncompleteBeta.Lower(k + 1, Trials - k, P, 1 - P);

    /// <summary>
    /// Two-sided p of an observed count: the chances of all counts that are no likelier than it, added up (ties within
    /// 1e-7 count as equal). It can disagree with a Clopper-Pearson interval at the edge.
    /// </summary>
    public double TwoSidedP(long observed)
    {
        double limit = Pmf(observed) * (1 + 1e-7);
        double mean = Trials * P;
        if (observed == mean)
        {
            return 1;
        }

        // The pmf falls on both sides of its mode, so the far set is a tail whose end a bisection finds.
        return observed < mean
            ? Math.Min(1, Cdf(observed) + UpperTail(FirstNoLikelier((long)Math.Ceiling(mean), Trials, limit) - 1))
            : Math.Min(1, UpperTail(observed - 1) + Cdf(Trials - FirstNoLikelier(Trials - (long)Math.Floor(mean), Trials, limit, mirrored: true)));
    }

    private double LogOneMinusP => P < 0.1 ? -P - (P * P / 2) - Rest(P) : Math.Log(1 - P);

    private static double Rest(double p)
    {
        double sum = 0, power = p * p;
        for (int i = 3; i < 20; i++)
        {
            power *= p;
            sum += power / i;
        }

        return sum;
    }

    private long FirstNoLikelier(long from, long to, double limit, bool mirrored = false)
    {
        long lower = from, upper = to + 1;
        while (lower < upper)
        {
            long middle = lower + ((upper - lower) / 2);
            if (Pmf(mirrored ? Trials - middle : middle) <= limit)
            {
                upper = middle;
            }
            else
            {
                lower = middle + 1;
            }
        }

        return lower;
    }
}
