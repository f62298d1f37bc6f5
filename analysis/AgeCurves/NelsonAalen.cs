namespace PartsSignal.Analysis.AgeCurves;

/// <summary>One step of a cumulative hazard.</summary>
/// <param name="Age">Age of the failures.</param>
/// <param name="AtRisk">Appliances at risk at this age.</param>
/// <param name="Failures">Failures at this age.</param>
/// <param name="CumulativeHazard">Expected failures per appliance up to this age, were each replaced at once.</param>
/// <param name="Variance">Sum d/n^2 (Aalen 1978).</param>
/// <param name="BinomialVariance">Sum d(n-d)/n^3: the smaller one, for many ties.</param>
/// <param name="Lower">Lower end of the 95 % interval on the log scale.</param>
/// <param name="Upper">Upper end of the 95 % interval on the log scale.</param>
internal sealed record HazardPoint(
    double Age, long AtRisk, long Failures, double CumulativeHazard, double Variance, double BinomialVariance, double Lower, double Upper);

/// <summary>What to do with several failures at one age.</summary>
internal enum TieRule
{
    /// <summary>One step of d/n.</summary>
    Together,

    /// <summary>1/n + 1/(n-1) + ...: as if in turn (Fleming and Harrington 1984).</summary>
    InTurn,
}

/// <summary>The cumulative hazard H(t) = sum over failure ages up to t of d/n (Nelson 1972; Aalen 1978).</summary>
internal static class NelsonAalen
{
    /// <summary>Estimates the cumulative hazard.</summary>
    /// <param name="ledger">Counts by age.</param>
    /// <param name="ties">What to do with ties.</param>
    /// <param name="start">Count only beyond this age, or null to start from the beginning.</param>
    public static IReadOnlyList<HazardPoint> Estimate(AgeLedger ledger, TieRule ties = TieRule.Together, double? start = null)
    {
        var points = new List<HazardPoint>();
        double hazard = 0;
        double variance = 0;
        double binomial = 0;
        foreach (RiskSet set in ledger.RiskSets(start))
        {
            double n = set.AtRisk;
            double d = set.Failures;
            hazard += ties == TieRule.Together ? d / n : InTurn(set);
            variance += d / (n * n);
            binomial += d * (n - d) / (n * n * n);
            (double lower, double upper) = Interval95.Log(hazard, Math.Sqrt(variance))!.Value;
            points.Add(new HazardPoint(set.Age, set.AtRisk, set.Failures, hazard, variance, binomial, lower, upper));
        }

        return points;
    }

    private static double InTurn(RiskSet set)
    {
        double sum = 0;
        for (long i = 0; i < set.Failures; i++)
        {
            sum += 1.0 / (set.AtRisk - i);
        }

        return sum;
    }
}
