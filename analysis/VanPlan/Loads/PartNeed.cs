namespace PartsSignal.Analysis.VanPlan.Loads;

/// <summary>So many pieces of one part.</summary>
/// <param name="Part">Index of the part in its list, 0 or more.</param>
/// <param name="Quantity">Pieces, 1 or more.</param>
public readonly record struct PartNeed(int Part, int Quantity);
