namespace PartsSignal.Analysis.Vocabulary;

/// <summary>Values of <c>appliance_type</c>.</summary>
public static class ApplianceType
{
    /// <summary>An appliance of none of the named types.</summary>
    public const string Other = "other";

    /// <summary>The types with a name of their own, as a person may choose them.</summary>
    public static IReadOnlyList<string> Named { get; } = ["washer", "dryer", "dishwasher", "refrigerator", "range", "microwave"];
}
