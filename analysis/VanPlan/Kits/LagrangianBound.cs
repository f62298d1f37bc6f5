namespace PartsSignal.Analysis.VanPlan.Kits;

/// <summary>
/// The least upper bound that prices on money and space give (Mamer and Shogan 1987), and every kit met on the way.
/// With one limit it equals the bound of the linear relaxation, because the closure's constraints are totally unimodular.
/// </summary>
internal sealed class LagrangianBound
{
    private const int MaxSteps = 60;
    private const int MaxSpaceSteps = 14;
    private readonly KitProblem _problem;
    private readonly PricedClosure _closure;

    private LagrangianBound(KitProblem problem)
    {
        _problem = problem;
        _closure = new PricedClosure(problem);
        Empty = new PricedKit(new int[problem.Parts.Count], problem.AlwaysDone, 0, 0);
    }

    /// <summary>No kit of this demand within these limits is worth more.</summary>
    public double Bound { get; private set; } = double.PositiveInfinity;

    /// <summary>Best price of a hundredth found.</summary>
    public double PerCent { get; private set; }

    /// <summary>Best price of a space unit found.</summary>
    public double PerSpace { get; private set; }

    /// <summary>Kits met on the sweep, feasible or not.</summary>
    public List<PricedKit> Kits { get; } = [];

    private PricedKit Empty { get; }

    /// <summary>Runs the sweep.</summary>
    public static LagrangianBound Of(KitProblem problem)
    {
        var bound = new LagrangianBound(problem);
        bound.Kits.Add(bound.Empty);
        bound.Sweep();
        return bound;
    }

    private void Sweep()
    {
        Tangent low = AtSpacePrice(0);
        double limit = _problem.Limits.Space;
        if (low.Space <= limit + KitLimits.SpaceSlack)
        {
            return;
        }

        double price = Math.Max(low.Dual, 1e-9) / Math.Max(limit, 1);
        Tangent high = AtSpacePrice(price);
        for (int step = 0; step < MaxSpaceSteps && high.Space > limit; step++)
        {
            low = high;
            price *= 8;
            high = AtSpacePrice(price);
        }

        for (int step = 0; step < MaxSpaceSteps && high.Space <= limit; step++)
        {
            // Where the two tangents of the convex dual meet.
            double slope = low.Space - high.Space;
            double meet = (low.Dual - high.Dual + ((low.Space - limit) * low.Price) + ((limit - high.Space) * high.Price)) / slope;
            double floor = low.Dual + ((limit - low.Space) * (meet - low.Price));
            if (!(meet > low.Price && meet < high.Price))
            {
                return;
            }

            Tangent next = AtSpacePrice(meet);
            if (next.Dual <= floor + (1e-7 * Math.Abs(floor)))
            {
                return;
            }

            (low, high) = next.Space > limit ? (next, high) : (low, next);
        }
    }

    /// <summary>The best price of money for one price of space, by secants on the breakpoints.</summary>
    private Tangent AtSpacePrice(double perSpace)
    {
        long budget = _problem.Limits.BudgetCents;
        PricedKit dear = Meet(0, perSpace);
        if (dear.CostCents <= budget)
        {
            return Note(0, perSpace, dear.Net(0, perSpace), dear.Space);
        }

        PricedKit cheap = Empty;
        double price = 0;
        double best = 0;
        for (int step = 0; step < MaxSteps; step++)
        {
            price = (dear.Net(0, perSpace) - cheap.Net(0, perSpace)) / (dear.CostCents - cheap.CostCents);
            PricedKit next = Meet(price, perSpace);
            best = Math.Max(dear.Net(price, perSpace), next.Net(price, perSpace));
            if (next.Net(price, perSpace) <= dear.Net(price, perSpace) + (1e-10 * (1 + Math.Abs(best))))
            {
                break;
            }

            (dear, cheap) = next.CostCents > budget ? (next, cheap) : (dear, next);
        }

        double share = (budget - cheap.CostCents) / (double)(dear.CostCents - cheap.CostCents);
        return Note(price, perSpace, best + (price * budget), (share * dear.Space) + ((1 - share) * cheap.Space));
    }

    private PricedKit Meet(double perCent, double perSpace)
    {
        PricedKit kit = _closure.Solve(perCent, perSpace);
        Kits.Add(kit);
        return kit;
    }

    private Tangent Note(double perCent, double perSpace, double dualWithoutSpace, double space)
    {
        double limit = _problem.Limits.Space;
        double dual = perSpace > 0 ? dualWithoutSpace + (perSpace * limit) : dualWithoutSpace;
        if (dual < Bound)
        {
            (Bound, PerCent, PerSpace) = (dual, perCent, perSpace);
        }

        return new Tangent(perSpace, dual, space);
    }

    private readonly record struct Tangent(double Price, double Dual, double Space);
}
