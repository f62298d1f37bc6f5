namespace PartsSignal.Analysis.VanPlan.Replay;

/// <summary>How one policy did on one van in one quarter it had not seen.</summary>
/// <param name="Quarter">For example 2026Q3.</param>
/// <param name="Van">The van.</param>
/// <param name="Policy">How it was stocked.</param>
/// <param name="Jobs">Jobs replayed.</param>
/// <param name="Finished">Of these finished at the first visit.</param>
/// <param name="Money">Money tied up.</param>
/// <param name="StaleStock">Money in pieces nobody asked for in the quarter.</param>
/// <param name="Weeks">Per week from the first day: jobs and jobs finished.</param>
public sealed record ReplayRow(
    string Quarter, string Van, ReplayPolicy Policy, int Jobs, int Finished, decimal Money, decimal StaleStock,
    IReadOnlyList<(int Week, int Jobs, int Finished)> Weeks);
