namespace PartsSignal.Analysis.VanPlan.Loads;

/// <summary>Brings a kit within its limits.</summary>
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
                if (state.Kit[p] > 0 && price > 0 && state.LossOfLast(p) / price < least)
                {
                    (weakest, least) = (p, state.LossOfLast(p) / price);
                }
            }

            state.Remove(weakest);
        }
    }
}
