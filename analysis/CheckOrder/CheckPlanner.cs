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
