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

    /// <summary>Improves the load in place.</summary>
    public void Run(LoadState state)
    {
        bool better = true;
        for (int round = 0; round < 12 && better; round++)
        {
            better = false;
            foreach (int part in Weakest(state))
            {
                for (int pieces = 1; pieces <= Math.Min(2, state.Pieces[part]); pieces++)
                {
                    better |= Try(state, part, pieces, part) || Try(state, part, pieces, -1);
                }
            }
        }
    }

    private bool Try(LoadState state, int part, int pieces, int except)
    {
        if (state.Pieces[part] < pieces)
        {
            return false;
        }

        int[] before = [.. state.Pieces];
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
            while (state.Pieces[p] > 0 && state.LossOfLast(p) <= 0)
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
            .Where(p => state.Pieces[p] > 0)
            .OrderBy(p => state.LossOfLast(p) / Math.Max((perCent * _problem.Parts[p].CostCents) + (perSpace * _problem.Parts[p].Space), 1e-12))
            .ThenBy(p => p)
            .Take(_tries)];
    }
}

/// <summary>Brings a load within its limits.</summary>
internal static class LoadRepair
{
    /// <summary>Takes off the piece that loses least per price until money and space hold.</summary>
    public static void TakeOffUntilAllowed(LoadProblem problem, LoadState state)
    {
        double perCent = 1.0 / Math.Max(problem.Limits.BudgetCents, 1);
        double perSpace = double.IsInfinity(problem.Limits.Space) ? 0 : 1 / Math.Max(problem.Limits.Space, 1);
        while (!state.IsAllowed)
        {
            bool overMoney = state.CostCents > problem.Limits.BudgetCents;
            bool overSpace = state.Space > problem.Limits.Space + LoadLimits.SpaceSlack;
            int weakest = -1;
            double least = double.PositiveInfinity;
            for (int p = 0; p < problem.Parts.Count; p++)
            {
                LoadPart part = problem.Parts[p];
                double price = (overMoney ? perCent * part.CostCents : 0) + (overSpace ? perSpace * part.Space : 0);
                if (state.Pieces[p] > 0 && price > 0 && state.LossOfLast(p) / price < least)
                {
                    (weakest, least) = (p, state.LossOfLast(p) / price);
                }
            }

            state.Remove(weakest);
        }
    }
}
