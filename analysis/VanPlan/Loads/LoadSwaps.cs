namespace PartsSignal.Analysis.VanPlan.Loads;

/// <summary>Takes off one part's pieces, or one part set, refills, and keeps what is better, until nothing is.</summary>
internal sealed class LoadSwaps
{
    private readonly LoadProblem _problem;
    private readonly GreedyLoad _fill;
    private readonly int _tries;

    /// <param name="problem">The problem.</param>
    /// <param name="tries">Parts tried per round, those that lose least per price first.</param>
    public LoadSwaps(LoadProblem problem, int tries)
    {
        (_problem, _tries) = (problem, tries);
        _fill = new GreedyLoad(problem);
    }

    /// <summary>Improves the kit in place.</summary>
    public void Run(LoadState state)
    {
        bool better = true;
        for (int round = 0; round < 12 && better; round++)
        {
            better = false;
            foreach (int part in Weakest(state))
            {
                for (int pieces = 1; pieces <= Math.Min(2, state.Kit[part]); pieces++)
                {
                    better |= Try(state, part, pieces, part) || Try(state, part, pieces, -1);
                }
            }
        }
    }

    private bool Try(LoadState state, int part, int pieces, int except)
    {
        if (state.Kit[part] < pieces)
        {
            return false;
        }

        int[] before = [.. state.Kit];
        (double value, long cost) = (state.Value, state.CostCents);
        for (int k = 0; k < pieces; k++)
        {
            state.Remove(part);
        }

        DropIdle(state);
        _fill.Run(state, except);
        double gain = state.Value - value;
        double noise = 1e-11 * (1 + Math.Abs(value));
        if (gain > noise || (gain > -noise && state.CostCents < cost))
        {
            return true;
        }

        state.Load(before);
        return false;
    }

    /// <summary>Pieces that finish nothing any more only take money.</summary>
    private void DropIdle(LoadState state)
    {
        for (int p = 0; p < _problem.Parts.Count; p++)
        {
            while (state.Kit[p] > 0 && state.LossOfLast(p) <= 0)
            {
                state.Remove(p);
            }
        }
    }

    private int[] Weakest(LoadState state)
    {
        double perCent = 1.0 / Math.Max(_problem.Limits.BudgetCents, 1);
        double perSpace = double.IsInfinity(_problem.Limits.Space) ? 0 : 1 / Math.Max(_problem.Limits.Space, 1);
        return [.. Enumerable.Range(0, _problem.Parts.Count)
            .Where(p => state.Kit[p] > 0)
            .OrderBy(p => state.LossOfLast(p) / Math.Max((perCent * _problem.Parts[p].CostCents) + (perSpace * _problem.Parts[p].Space), 1e-12))
            .ThenBy(p => p)
            .Take(_tries)];
    }
}
