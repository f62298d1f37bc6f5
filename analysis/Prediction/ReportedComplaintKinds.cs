namespace PartsSignal.Analysis.Prediction;

/// <summary>The complaint kinds whose predictions are also reported separately, stated once for the run record and the result tables.</summary>
public static class ReportedComplaintKinds
{
    /// <summary>The kind with a key of its own in the run record and a slice of its own in the result tables.</summary>
    public const string NoFill = "no_fill";

    /// <summary>All of them: the common ones of each appliance type.</summary>
    public static IReadOnlyList<string> All { get; } = [NoFill, "no_drain", "no_spin", "no_heat", "leak", "not_cooling", "no_start"];
}
