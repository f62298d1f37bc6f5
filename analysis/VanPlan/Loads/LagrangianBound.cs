namespace PartsSignal.Analysis.VanPlan.Loads;

/// <summary>
/// The least upper bound that prices on money and space give (Mamer and Shogan 1987), and every load met on the way.
/// With one limit it equals the bound of the linear relaxation, because the closure's constraints are totally unimodular.
/// The prices are found by cutting planes (Kelley 1960): each load met bounds the dual from below everywhere.
/// </summary>
internal sealed class LagrangianBound
{
    private const int MaxSteps = 80;
    private readonly LoadProblem _problem;
    private readonly PricedClosure _closure;

    private LagrangianBound(LoadProblem problem)
    {
        _problem = problem;
        _closure = new PricedClosure(problem);
    }

    /// <summary>No load of this demand within these limits is worth more.</summary>
    public double Bound { get; private set; } = double.PositiveInfinity;

    /// <summary>Best price of a hundredth found.</summary>
    public double PerCent { get; private set; }

    /// <summary>Best price of a space unit found.</summary>
    public double PerSpace { get; private set; }

    /// <summary>Loads met on the sweep, feasible or not.</summary>
    public List<PricedLoad> Loads { get; } = [];

    /// <summary>Runs the sweep.</summary>
    /// <param name="problem">The problem.</param>
    /// <param name="tolerance">Distance from the least bound allowed, as a share of what can be gained.</param>
    public static LagrangianBound Compute(LoadProblem problem, double tolerance = 1e-9)
    {
        var bound = new LagrangianBound(problem);
        bound.Loads.Add(new PricedLoad(new int[problem.Parts.Count], problem.AlwaysDone, 0, 0));
        bound.Sweep(tolerance);
        return bound;
    }

    private void Sweep(double tolerance)
    {
        var planes = new DualPlanes(_problem.Limits);
        planes.Add(Loads[0]);
        planes.Add(Meet(0, 0));
        for (int step = 0; step < MaxSteps; step++)
        {
            DualPoint least = planes.Least();
            double slack = tolerance * Math.Max(1e-12, Bound - _problem.AlwaysDone);
            if (Bound - least.Value <= slack)
            {
                return;
            }

            PricedLoad next = Meet(least.PerCent, least.PerSpace);
            planes.Add(next);
            if (planes.At(next, least) - least.Value <= slack)
            {
                return;
            }
        }
    }

    /// <summary>Runs the cut at one pair of prices and notes the bound it proves.</summary>
    private PricedLoad Meet(double perCent, double perSpace)
    {
        PricedLoad load = _closure.Solve(perCent, perSpace);
        Loads.Add(load);
        LoadLimits limits = _problem.Limits;
        double dual = load.Net(perCent, perSpace) + (perCent * limits.BudgetCents) + (perSpace > 0 ? perSpace * limits.Space : 0);

        // The cut works in whole numbers: what rounding can hide is added.
        dual += 1e-11 * (_problem.TotalWeight + Math.Abs(dual));
        if (dual < Bound)
        {
            (Bound, PerCent, PerSpace) = (dual, perCent, perSpace);
        }

        return load;
    }
}
