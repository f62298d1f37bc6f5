using PartsSignal.Analysis.VanPlan.Loads;

namespace PartsSignal.Analysis.VanPlan;

/// <summary>A settled job as the demand model sees it.</summary>
/// <param name="Van">Index of the van; -1: unknown, counts for the shop only.</param>
/// <param name="Day">Day of the call.</param>
/// <param name="Type">Index of the appliance type; -1: unknown.</param>
/// <param name="Family">Index of the model family; -1: unknown.</param>
/// <param name="Needs">Parts it needed, each part once; empty: none.</param>
public sealed record PastJob(int Van, DateOnly Day, int Type, int Family, IReadOnlyList<PartNeed> Needs);
