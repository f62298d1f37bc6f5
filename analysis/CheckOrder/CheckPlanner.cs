namespace PartsSignal.Analysis.CheckOrder;

/// <summary>Finds the order of checks with the fewest expected minutes.</summary>
internal static class CheckPlanner
{
    /// <summary>Largest number of suspects that is solved exactly.</summary>
    public const int MostExact = 15;

    /// <summary>
    /// The best order: exact over all subsets up to <see cref="MostExact"/> suspects, by the ratio rule beyond. Free and
    /// safety checks come first in the order given, and are never left out.
    /// </summary>
    public static CheckPlan Best(CheckProblem problem)
    {
        int[] first = First(problem);
        int free = problem.Suspects.Count - first.Length;
        int[] rest = free <= MostExact ? SubsetSearch.Order(problem, first) : RatioRule.Order(problem, first);
        int[] order = [.. first, .. rest];
        return new CheckPlan(order, problem.ExpectedMinutes(order), free <= MostExact);
    }

    /// <summary>The plain habit of starting with the quickest check, free and safety checks first.</summary>
    public static CheckPlan CheapestFirst(CheckProblem problem) => By(problem, s => s.Minutes);

    /// <summary>The plain habit of starting with the likeliest fault, free and safety checks first.</summary>
    public static CheckPlan LikeliestFirst(CheckProblem problem) => By(problem, s => -s.Probability);

    private static CheckPlan By(CheckProblem problem, Func<Suspect, double> key)
    {
        int[] first = First(problem);
        int[] order = [.. first, .. Enumerable.Range(0, problem.Suspects.Count).Except(first).OrderBy(i => key(problem.Suspects[i])).ThenBy(i => i)];
        return new CheckPlan(order, problem.ExpectedMinutes(order), false);
    }

    private static int[] First(CheckProblem problem) =>
        [.. Enumerable.Range(0, problem.Suspects.Count).Where(i => problem.Suspects[i].AlwaysFirst)];
}

/// <summary>An order of checks.</summary>
/// <param name="Order">Places in the list of suspects, first check first.</param>
/// <param name="ExpectedMinutes">Expected minutes until the fault is found or all checks are done.</param>
/// <param name="Exact">True: no order is quicker; false: found by a rule.</param>
internal sealed record CheckPlan(IReadOnlyList<int> Order, double ExpectedMinutes, bool Exact);

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
