namespace PartsSignal.Analysis.VanPlan.Loads;

/// <summary>How a kit was found.</summary>
public enum LoadMethod
{
    /// <summary>Nothing is worth carrying, or nothing fits.</summary>
    Empty,

    /// <summary>Prices on money and space, minimum cut, filled up.</summary>
    Cut,

    /// <summary>Most worth per price first, with whole part sets.</summary>
    PerCost,

    /// <summary>Most worth first, with whole part sets.</summary>
    ByWorth,

    /// <summary>Branches on the cut.</summary>
    Branch,

    /// <summary>Integer program.</summary>
    IntegerProgram,
}
