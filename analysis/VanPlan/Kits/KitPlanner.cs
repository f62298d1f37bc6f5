namespace PartsSignal.Analysis.VanPlan.Kits;

/// <summary>
/// Finds a kit and bounds the best one. Candidates come from the priced cuts, from two greedy fills and, where that
/// leaves a gap, from branching and from an integer program; swaps improve them. Ties go to the cheaper kit, then to
/// the one that carries more of the lower part numbers.
/// </summary>
public static class KitPlanner
{
    /// <summary>Plans one van.</summary>
    public static KitPlan Plan(KitProblem problem, KitEffort effort)
    {
        LagrangianBound cuts = LagrangianBound.Of(problem, effort.GoodEnough / 20);
        bool small = problem.Units.Total + problem.Jobs.Count <= effort.SmallProblem;
        var search = new Search(problem, cuts.Bound);
        foreach (PricedKit kit in NearLimits(problem, cuts))
        {
            search.Offer(kit.Kit, KitMethod.Cut);
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
                search.Offer(exact.Kit, KitMethod.IntegerProgram);
            }
        }

        if (search.Gap > effort.GoodEnough && effort.Branches > 0)
        {
            BranchResult branched = KitBranches.Run(problem, search.Best, effort);
            search.Lower(branched.Bound);
            search.Offer(branched.Kit, KitMethod.Branch);
        }

        return search.Result() with { SolverMissing = missing };
    }

    /// <summary>The kits just within and just beyond the limits; the others only matter where these are the same.</summary>
    private static IEnumerable<PricedKit> NearLimits(KitProblem problem, LagrangianBound cuts)
    {
        PricedKit[] within = [.. cuts.Kits.Where(k => problem.Limits.Allows(k.CostCents, k.Space)).OrderByDescending(k => k.Value).Take(3)];
        PricedKit[] beyond = [.. cuts.Kits.Where(k => !problem.Limits.Allows(k.CostCents, k.Space))
            .OrderBy(k => Math.Max((double)k.CostCents / Math.Max(problem.Limits.BudgetCents, 1), k.Space / Math.Max(problem.Limits.Space, 1)))
            .Take(2)];
        return within.Concat(beyond);
    }

    private sealed class Search(KitProblem problem, double bound)
    {
        private readonly KitState _state = new(problem);
        private readonly KitFill _fill = new(problem);
        private KitMethod _method = KitMethod.Empty;
        private double _value = problem.AlwaysDone;
        private long _cost;
        private double _bound = Math.Max(bound, problem.AlwaysDone);

        public int[] Best { get; private set; } = new int[problem.Parts.Count];

        public double Gap => _bound - problem.AlwaysDone > 1e-12 ? (_bound - _value) / (_bound - problem.AlwaysDone) : 0;

        public void Lower(double other) => _bound = Math.Min(_bound, other);

        public void Offer(int[] kit, KitMethod method)
        {
            _state.Load(kit);
            KitRepair.TakeOffUntilAllowed(problem, _state);
            _fill.Run(_state);
            Keep(method);
        }

        public void Greedy(bool byWorth)
        {
            _state.Load(new int[problem.Parts.Count]);
            _fill.Run(_state, byWorth: byWorth);
            Keep(byWorth ? KitMethod.ByWorth : KitMethod.PerCost);
        }

        public void Swap(int tries, double goodEnough)
        {
            if (tries > 0 && Gap > goodEnough)
            {
                _state.Load(Best);
                new KitSwaps(problem, tries).Run(_state);
                Keep(_method);
            }
        }

        public KitPlan Result() => new(
            Best, _value, Math.Max(_bound, _value), problem.AlwaysDone, problem.CostCents(Best), problem.SpaceOf(Best), _method);

        private void Keep(KitMethod method)
        {
            double value = problem.Value(_state.Kit);
            double lead = value - _value;
            if (lead > 1e-11 || (lead > -1e-11 && (_state.CostCents < _cost || (_state.CostCents == _cost && IsEarlier(_state.Kit, Best)))))
            {
                (Best, _value, _cost) = ([.. _state.Kit], value, _state.CostCents);
                _method = Best.All(q => q == 0) ? KitMethod.Empty : method;
            }
        }

        private static bool IsEarlier(int[] kit, int[] other)
        {
            int at = kit.AsSpan().CommonPrefixLength(other);
            return at < kit.Length && kit[at] > other[at];
        }
    }
}
