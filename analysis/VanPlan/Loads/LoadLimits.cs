namespace PartsSignal.Analysis.VanPlan.Loads;

/// <summary>What a van may hold.</summary>
/// <param name="BudgetCents">Money in hundredths, 0 or more.</param>
/// <param name="Space">Space units, 0 or more; infinite: not limited.</param>
public sealed record LoadLimits(long BudgetCents, double Space)
{
    /// <summary>Slack for sums of space units.</summary>
    internal const double SpaceSlack = 1e-9;

    /// <summary>True when both limits hold.</summary>
    public bool Allows(long costCents, double space) => costCents <= BudgetCents && space <= Space + SpaceSlack;
}
