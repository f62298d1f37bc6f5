namespace PartsSignal.Analysis.AgeCurves;

/// <summary>
/// Running variance of one cumulative incidence in the martingale form of Aalen (1978), with the tie correction
/// 1 - (d-1)/(n-1) that Gray (1988) uses: Var F(t) = sum (1 - F(t) - ...)^2 terms of the cause itself plus those of
/// the other causes, kept as three sums so that each step costs the same.
/// </summary>
internal sealed class AalenVariance
{
    private double _squares;
    private double _crosses;
    private double _plain;

    /// <summary>Adds one step and gives the variance at it.</summary>
    /// <param name="atRisk">Appliances at risk.</param>
    /// <param name="own">Failures of this cause.</param>
    /// <param name="others">Failures of other causes.</param>
    /// <param name="before">Survival just before.</param>
    /// <param name="after">Survival just after.</param>
    /// <param name="share">Incidence of this cause just after.</param>
    public double Step(long atRisk, long own, long others, double before, double after, double share)
    {
        double inverse = after > 0 ? 1 / after : 0;
        if (others > 0 && after > 0)
        {
            Add(Weight(atRisk, others, before), share * inverse, inverse);
        }

        if (own > 0)
        {
            Add(Weight(atRisk, own, before), 1 + share * inverse, inverse);
        }

        return Math.Max(0, _squares + share * share * _plain - 2 * share * _crosses);
    }

    private static double Weight(long atRisk, long failures, double before)
    {
        double ties = failures > 1 ? 1 - (failures - 1.0) / (atRisk - 1.0) : 1;
        return before * before * ties * failures / ((double)atRisk * atRisk);
    }

    private void Add(double weight, double share, double inverse)
    {
        _squares += share * share * weight;
        _crosses += share * inverse * weight;
        _plain += inverse * inverse * weight;
    }
}
