namespace PartsSignal.Analysis.VanPlan;

/// <summary>How many of each there are; indexes run below these.</summary>
public sealed record DemandSizes(int Vans, int Types, int Families, int Parts);
