namespace PartsSignal.Analysis.VanPlan.Replay;

/// <summary>A way to stock a van, judged by replay.</summary>
public enum ReplayPolicy
{
    /// <summary>The plan made from what was known before the quarter.</summary>
    Plan,

    /// <summary>Most used parts first.</summary>
    MostUsed,

    /// <summary>Most used per money first.</summary>
    MostUsedPerCost,

    /// <summary>The best kit for the very jobs that came: a ceiling no plan can know.</summary>
    Hindsight,

    /// <summary>What was counted on the van, at the end of the data; its money is its own.</summary>
    Counted,
}
