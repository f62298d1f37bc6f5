namespace PartsSignal.Analysis.VanPlan.Loads;

/// <summary>How hard the planner searches. Everything is counted in steps, never in seconds, so that a plan repeats.</summary>
public sealed record LoadEffort
{
    /// <summary>Search stops when the kit is within this share of the bound. Default 0.001.</summary>
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
