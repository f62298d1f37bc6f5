namespace PartsSignal.Analysis.VanPlan.Loads;

/// <summary>
/// Finds a load and bounds the best one. Candidates come from the priced cuts, from two greedy fills and, where that
/// leaves a gap, from branching and from an integer program; swaps improve them. Ties go to the cheaper load, then to
/// the one that carries more of the lower part numbers.
/// </summary>
internal static class VanLoadPlanner
{
    /// <summary>Plans one van.</summary>
    public static VanLoad Plan(LoadProblem problem, LoadEffort effort)
    {
        LagrangianBound cuts = LagrangianBound.Compute(problem, effort.GoodEnough / 20);
        bool small = problem.Units.Total + problem.Jobs.Count <= effort.SmallProblem;
        var search = new Search(problem, cuts.Bound);
        foreach (PricedLoad load in NearLimits(problem, cuts))
        {
            search.Offer(load.Pieces, LoadMethod.Cut);
        }

        search.Swap(effort.SwapTries, effort.GoodEnough);
        if (search.Gap > effort.GoodEnough && small)
        {
            search.Greedy(byWorth: false);
            search.Greedy(byWorth: true);
            search.Swap(effort.SwapTries, effort.GoodEnough);
        }

        bool missing = false;
        if (search.Gap > effort.GoodEnough && effort.IntegerNodes > 0 && small)
        {
            (BranchResult? exact, missing) = IntegerProgram.TrySolve(problem, search.Best, effort);
            if (exact is not null)
            {
                search.Lower(exact.Bound);
                search.Offer(exact.Pieces, LoadMethod.IntegerProgram);
            }
        }

        if (search.Gap > effort.GoodEnough && effort.Branches > 0)
        {
            BranchResult branched = LoadBranchSearch.Run(problem, search.Best, effort);
            search.Lower(branched.Bound);
            search.Offer(branched.Pieces, LoadMethod.Branch);
        }

        return search.Result() with { SolverMissing = missing };
    }

    /// <summary>The loads just within and just beyond the limits; the others only matter where these are the same.</summary>
    private static IEnumerable<PricedLoad> NearLimits(LoadProblem problem, LagrangianBound cuts)
    {
        PricedLoad[] within = [.. cuts.Loads.Where(k => problem.Limits.Allows(k.CostCents, k.Space)).OrderByDescending(k => k.Value).Take(3)];
        PricedLoad[] beyond = [.. cuts.Loads.Where(k => !problem.Limits.Allows(k.CostCents, k.Space))
            .OrderBy(k => Math.Max((double)k.CostCents / Math.Max(problem.Limits.BudgetCents, 1), k.Space / Math.Max(problem.Limits.Space, 1)))
            .Take(2)];
        return within.Concat(beyond);
    }

    private sealed class Search(LoadProblem problem, double bound)
    {
        private readonly LoadState _state = new(problem);
        private readonly GreedyLoad _fill = new(problem);
        private LoadMethod _method = LoadMethod.Empty;
        private double _value = problem.AlwaysDone;
        private long _cost;
        private double _bound = Math.Max(bound, problem.AlwaysDone);

        public int[] Best { get; private set; } = new int[problem.Parts.Count];

        public double Gap => _bound - problem.AlwaysDone > 1e-12 ? (_bound - _value) / (_bound - problem.AlwaysDone) : 0;

        public void Lower(double other) => _bound = Math.Min(_bound, other);

        public void Offer(int[] load, LoadMethod method)
        {
            _state.Load(load);
            LoadRepair.TakeOffUntilAllowed(problem, _state);
            _fill.Run(_state);
            Keep(method);
        }

        public void Greedy(bool byWorth)
        {
            _state.Load(new int[problem.Parts.Count]);
            _fill.Run(_state, byWorth: byWorth);
            Keep(byWorth ? LoadMethod.ByWorth : LoadMethod.PerCost);
        }

        public void Swap(int tries, double goodEnough)
        {
            if (tries > 0 && Gap > goodEnough)
            {
                _state.Load(Best);
                new LoadSwaps(problem, tries).Run(_state);
                Keep(_method);
            }
        }

        public VanLoad Result() => new(
            Best, _value, Math.Max(_bound, _value), problem.AlwaysDone, problem.CostCents(Best), problem.SpaceOf(Best), _method);

        private void Keep(LoadMethod method)
        {
            double value = problem.Value(_state.Pieces);
            double lead = value - _value;
            if (lead > 1e-11 || (lead > -1e-11 && (_state.CostCents < _cost || (_state.CostCents == _cost && IsEarlier(_state.Pieces, Best)))))
            {
                (Best, _value, _cost) = ([.. _state.Pieces], value, _state.CostCents);
                _method = Best.All(q => q == 0) ? LoadMethod.Empty : method;
            }
        }

        private static bool IsEarlier(int[] load, int[] other)
        {
            int at = load.AsSpan().CommonPrefixLength(other);
            return at < load.Length && load[at] > other[at];
        }
    }
}
