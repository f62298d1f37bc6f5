namespace PartsSignal.Analysis.Statistics.Shrinkage;

/// <summary>Events of one group over its exposure.</summary>
/// <param name="Events">0 or more.</param>
/// <param name="Exposure">0 or more; with 0 the group says nothing about the others and its answer is the common one.</param>
public sealed record CountGroup(long Events, double Exposure);
