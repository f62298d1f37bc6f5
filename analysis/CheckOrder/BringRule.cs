namespace PartsSignal.Analysis.CheckOrder;

/// <summary>
/// When to stop asking and bring the part: once its odds q make an avoided second visit worth more than a part carried
/// for nothing, q * visit &gt;= (1 - q) * wrong part.
/// </summary>
internal static class BringRule
{
    /// <summary>Smallest odds at which the part is brought, 0 to 1: wrong / (wrong + visit).</summary>
    /// <param name="wrongPartCost">What a part brought or ordered for nothing costs, in the shop's currency, 0 or more.</param>
    /// <param name="secondVisitCost">What an avoidable second visit costs, above 0.</param>
    public static double Threshold(double wrongPartCost, double secondVisitCost)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(wrongPartCost);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(secondVisitCost);
        return wrongPartCost / (wrongPartCost + secondVisitCost);
    }

    /// <summary>True when the part should be on the van.</summary>
    public static bool Bring(double odds, double wrongPartCost, double secondVisitCost) =>
        odds >= Threshold(wrongPartCost, secondVisitCost);
}
