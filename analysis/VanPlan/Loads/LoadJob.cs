namespace PartsSignal.Analysis.VanPlan.Loads;

/// <summary>A job that is finished when the van started out with at least so many pieces of each part.</summary>
/// <param name="Weight">What finishing it is worth, in the unit of the objective; 0 or more.</param>
/// <param name="Levels">Pieces the van must have started out with, so that this job still finds its own; a part at most once.</param>
public sealed record LoadJob(double Weight, IReadOnlyList<PartNeed> Levels);
