namespace PartsSignal.Analysis.VanPlan.Replay;

/// <summary>How much of the way from a plain rule to hindsight a plan goes.</summary>
internal static class GapShare
{
    /// <summary>(plan - plain) / (hindsight - plain); null when hindsight is no better than the plain rule. Below 0 when the plan is worse than plain.</summary>
    public static double? From(double plan, double plain, double hindsight) =>
        hindsight - plain > 1e-12 ? (plan - plain) / (hindsight - plain) : null;
}
