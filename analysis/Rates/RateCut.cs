namespace PartsSignal.Analysis.Rates;

/// <summary>Further cuts of the failure rates, by a property of the call; <c>rate_cells.sql</c> says where each value comes from.</summary>
public static class RateCut
{
    /// <summary>Their names, for help.</summary>
    public const string Names = "customer_kind, warranty";

    /// <summary>Their names.</summary>
    public static IReadOnlyList<string> Properties { get; } = Names.Split(", ");
}
