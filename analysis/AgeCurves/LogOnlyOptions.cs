namespace PartsSignal.Analysis.AgeCurves;

/// <summary>When a curve may be told from the job log alone.</summary>
/// <param name="Fewest">Fewest failures for any curve.</param>
/// <param name="FewestFree">Fewest failures for a curve without a form; below it a Weibull form is fitted.</param>
public sealed record LogOnlyOptions(int Fewest = 20, int FewestFree = 100);
