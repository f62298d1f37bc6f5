namespace PartsSignal.Analysis.VanPlan.Loads;

/// <summary>A kit, what it is worth, and how far the best possible kit could be above it.</summary>
/// <param name="Quantities">Pieces per part, by index.</param>
/// <param name="Value">Worth of the jobs it finishes less its charges, in the unit of the objective.</param>
/// <param name="Bound">No kit within these limits is worth more for this demand.</param>
/// <param name="AlwaysDone">Part of both that any kit gets.</param>
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
