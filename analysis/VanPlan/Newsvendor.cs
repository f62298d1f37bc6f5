using PartsSignal.Analysis.Statistics.Distributions;

namespace PartsSignal.Analysis.VanPlan;

/// <summary>
/// One part on the shop's shelf against a negative binomial demand over review period and lead time. Use the
/// predictive distribution, not one with the rate plugged in (Prak and Teunter 2019).
/// </summary>
internal sealed class Newsvendor
{
    private readonly NegativeBinomialDistribution _demand;
    private readonly double _under;
    private readonly double _over;

    /// <param name="demand">Pieces asked for until the next delivery.</param>
    /// <param name="underageCost">Cost of a piece missing, above 0.</param>
    /// <param name="overageCost">Cost of a piece left over, above 0.</param>
    public Newsvendor(NegativeBinomialDistribution demand, double underageCost, double overageCost)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(underageCost);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(overageCost);
        (_demand, _under, _over) = (demand, underageCost, overageCost);
    }

    /// <summary>Wanted probability that nothing is missing: cu / (cu + co).</summary>
    public double CriticalRatio => _under / (_under + _over);

    /// <summary>Smallest stock whose probability of missing nothing reaches the critical ratio.</summary>
    public int BestStock => (int)_demand.Quantile(CriticalRatio);

    /// <summary>Pieces missing on average: E max(D - stock, 0).</summary>
    public double ExpectedMissing(int stock)
    {
        double missing = _demand.Mean;
        for (int k = 0; k < stock; k++)
        {
            missing -= _demand.UpperTail(k);
        }

        return Math.Max(missing, 0);
    }
}
