namespace PartsSignal.Analysis.VanPlan.Loads;

/// <summary>
/// Best-first branch and bound on the Lagrangian bound: a unit that the two cuts at the limit disagree on is put
/// aboard in one branch and kept off in the other. Exact when it runs out of branches, a better bound when not.
/// </summary>
internal static class LoadBranchSearch
{
    /// <summary>Units and jobs looked at in all branches together, so that a large van takes few branches.</summary>
    private const int Work = 60_000;

    /// <summary>Searches from the best load known.</summary>
    public static BranchResult Run(LoadProblem problem, int[] start, LoadEffort effort)
    {
        double best = problem.Value(start);
        int[] load = start;
        var open = new PriorityQueue<Node, (double, int)>();
        int made = 0;
        void Open(int[] least, int[] most)
        {
            if (LoadWindow.Create(problem, least, most) is not { } window)
            {
                return;
            }

            LagrangianBound cuts = LagrangianBound.Compute(window.Problem, effort.GoodEnough / 20);
            foreach (PricedLoad found in cuts.Loads)
            {
                int[] whole = window.Whole(found.Pieces);
                double value = problem.Value(whole);
                if (value > best && problem.Limits.Allows(problem.CostCents(whole), problem.SpaceOf(whole)))
                {
                    (best, load) = (value, whole);
                }
            }

            double bound = window.Base + cuts.Bound;
            if (bound > best + 1e-9)
            {
                open.Enqueue(new Node(least, most, bound, window.Whole(Beyond(window.Problem, cuts)), window.Whole(Within(window.Problem, cuts))), (-bound, made++));
            }
        }

        Open(new int[start.Length], [.. Enumerable.Range(0, start.Length).Select(problem.Units.Count)]);
        int steps = 0;
        int allowed = Math.Min(effort.Branches, 1 + (Work / (1 + problem.Units.Total + problem.Jobs.Count)));
        while (open.TryPeek(out Node? node, out _) && node.Bound > best + Allowed(problem, best, effort) && steps < allowed)
        {
            open.Dequeue();
            steps++;
            if (Split(problem, node) is not (int part, int pieces))
            {
                continue;
            }

            int[] least = [.. node.Least];
            least[part] = pieces;
            Open(least, node.Most);
            int[] most = [.. node.Most];
            most[part] = pieces - 1;
            Open(node.Least, most);
        }

        double left = open.TryPeek(out Node? rest, out _) ? rest.Bound : best;
        return new BranchResult(load, Math.Max(best, left));
    }

    private static double Allowed(LoadProblem problem, double best, LoadEffort effort) =>
        effort.GoodEnough * Math.Max(0, best - problem.AlwaysDone);

    private static int[] Beyond(LoadProblem problem, LagrangianBound cuts) =>
        (cuts.Loads.Where(k => !problem.Limits.Allows(k.CostCents, k.Space)).MinBy(k => k.CostCents) ?? cuts.Loads[^1]).Pieces;

    private static int[] Within(LoadProblem problem, LagrangianBound cuts) =>
        cuts.Loads.Where(k => problem.Limits.Allows(k.CostCents, k.Space)).MaxBy(k => k.Value)!.Pieces;

    /// <summary>The dearest unit only one of the two loads has; else any part still free.</summary>
    private static (int Part, int Pieces)? Split(LoadProblem problem, Node node)
    {
        int[] free = [.. Enumerable.Range(0, node.Most.Length).Where(p => node.Least[p] < node.Most[p])];
        int[] split = [.. free.Where(p => node.Beyond[p] != node.Within[p])];
        int[] from = split.Length > 0 ? split : free;
        if (from.Length == 0)
        {
            return null;
        }

        int part = from.OrderByDescending(p => problem.Parts[p].CostCents).ThenBy(p => p).First();
        int pieces = Math.Max(node.Beyond[part], node.Within[part]);
        return (part, Math.Clamp(pieces, node.Least[part] + 1, node.Most[part]));
    }

    private sealed record Node(int[] Least, int[] Most, double Bound, int[] Beyond, int[] Within);
}
