namespace PartsSignal.Analysis.VanPlan.Loads;

/// <summary>A load, what it is worth, and how far the best possible load could be above it.</summary>
/// <param name="Quantities">Pieces per part, by index.</param>
/// <param name="Value">Worth of the jobs it finishes less its charges, in the unit of the objective.</param>
/// <param name="Bound">No load within these limits is worth more for this demand.</param>
/// <param name="AlwaysDone">Part of both that any load gets.</param>
/// <param name="CostCents">Money tied up, hundredths.</param>
/// <param name="Space">Space units taken.</param>
/// <param name="Method">Which search found it.</param>
/// <param name="SolverMissing">True: the integer program was wanted, but its native library is not there; the search is managed code alone.</param>
public sealed record VanLoad(
    IReadOnlyList<int> Quantities, double Value, double Bound, double AlwaysDone, long CostCents, double Space, LoadMethod Method,
    bool SolverMissing = false)
{
    /// <summary>
    /// The best possible plan for this demand is at most so much better, as a share of what it gains over an empty van
    /// (0 to 1); 0 when nothing can be gained.
    /// </summary>
    public double Gap => Bound - AlwaysDone > 1e-12 ? Math.Max(0, (Bound - Value) / (Bound - AlwaysDone)) : 0;
}

/// <summary>How a load was found.</summary>
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

/// <summary>How hard the planner searches. Everything is counted in steps, never in seconds, so that a plan repeats.</summary>
public sealed record LoadEffort
{
    /// <summary>Search stops when the load is within this share of the bound. Default 0.001.</summary>
    public double GoodEnough { get; init; } = 0.001;

    /// <summary>Parts tried per round of swaps. Default 60.</summary>
    public int SwapTries { get; init; } = 60;

    /// <summary>Branches of the managed search; fewer on a large problem; 0: none. Default 400.</summary>
    public int Branches { get; init; } = 400;

    /// <summary>Nodes the integer program may open; 0: it is not used. Default 200.</summary>
    public int IntegerNodes { get; init; } = 200;

    /// <summary>The integer program and the greedy fills are for problems of at most so many pieces and jobs. Default 1,500.</summary>
    public int SmallProblem { get; init; } = 1500;

    /// <summary>For a plan a person acts on.</summary>
    public static LoadEffort Thorough { get; } = new();

    /// <summary>For the many plans of a replay or a curve: bound, fill and swaps only.</summary>
    public static LoadEffort Quick { get; } = new() { SwapTries = 15, Branches = 0, IntegerNodes = 0, GoodEnough = 0.003 };
}
