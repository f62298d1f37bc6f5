using PartsSignal.Analysis.VanPlan.Loads;

namespace PartsSignal.Analysis.VanPlan;

/// <summary>How often jobs with one part set come.</summary>
/// <param name="Needs">The set; empty: jobs that need no part.</param>
/// <param name="PerDay">Jobs a day, 0 or more.</param>
public sealed record PartSetRate(IReadOnlyList<PartNeed> Needs, double PerDay);
