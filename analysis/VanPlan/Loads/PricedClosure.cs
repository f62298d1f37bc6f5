namespace PartsSignal.Analysis.VanPlan.Loads;

/// <summary>
/// The best load when money and space cost something and are not limited: a maximum-weight closure, found as a minimum
/// cut (Rhys 1970; Picard 1976; for repair kits Mamer and Smith 1982). A job needs its units, a unit the one before it.
/// </summary>
internal sealed class PricedClosure
{
    private readonly LoadProblem _problem;
    private readonly MaximumFlow _flow;
    private readonly double _scale;

    public PricedClosure(LoadProblem problem)
    {
        _problem = problem;
        LoadUnits units = problem.Units;
        LoadJobs jobs = problem.Jobs;
        var arcs = new List<(int, int)>();
        for (int u = 0; u < units.Total; u++)
        {
            if (units.Piece(u) > 1)
            {
                arcs.Add((u, u - 1));
            }
        }

        for (int j = 0; j < jobs.Count; j++)
        {
            for (int i = jobs.First(j); i < jobs.First(j) + jobs.Lines(j); i++)
            {
                arcs.Add((units.Total + j, units.Of(jobs.Part[i], jobs.Level[i])));
            }
        }

        _flow = new MaximumFlow(units.Total + jobs.Count, arcs);
        double all = units.Gain.Sum() + jobs.Weight.Sum();
        _scale = all > 0 ? Math.ScaleB(1, 44) / all : 1;
    }

    /// <summary>Runs the cut for one pair of prices.</summary>
    /// <param name="perCent">Worth of a hundredth of the currency.</param>
    /// <param name="perSpace">Worth of a space unit.</param>
    public PricedLoad Solve(double perCent, double perSpace)
    {
        LoadUnits units = _problem.Units;
        for (int u = 0; u < units.Total; u++)
        {
            LoadPart part = _problem.Parts[units.Part[u]];
            double net = units.Gain[u] - units.Charge[u] - (perCent * part.CostCents) - (perSpace * part.Space);
            _flow.Set(u, Whole(net), Whole(-net));
        }

        for (int j = 0; j < _problem.Jobs.Count; j++)
        {
            _flow.Set(units.Total + j, Whole(_problem.Jobs.Weight[j]), 0);
        }

        _flow.Run();
        int[] load = new int[_problem.Parts.Count];
        for (int u = 0; u < units.Total; u++)
        {
            if (_flow.OnSourceSide(u))
            {
                load[units.Part[u]]++;
            }
        }

        return new PricedLoad(load, _problem.Value(load), _problem.CostCents(load), _problem.SpaceOf(load));
    }

    private long Whole(double worth) => worth <= 0 ? 0 : (long)Math.Min(Math.Round(worth * _scale), MaximumFlow.Unlimited / 4.0);
}

/// <summary>A load with its worth (before prices), money and space.</summary>
internal sealed record PricedLoad(int[] Pieces, double Value, long CostCents, double Space)
{
    /// <summary>Worth left after paying the prices.</summary>
    public double Net(double perCent, double perSpace) => Value - (perCent * CostCents) - (perSpace * Space);
}
