using PartsSignal.Analysis.Sql;

namespace PartsSignal.Analysis.Suppliers;

/// <summary>How the parts of one supplier do: what goes back, and what fails again within 90 days of being fitted.</summary>
public sealed record SupplierPart
{
    /// <summary>The supplier.</summary>
    public required string Supplier { get; init; }

    /// <summary>The component, or null for all.</summary>
    public string? Component { get; init; }

    /// <summary>Pieces received.</summary>
    public required long Pieces { get; init; }

    /// <summary>Of them sent back.</summary>
    public required long PiecesReturned { get; init; }

    /// <summary>Returned / received on lines that tell returns, or null if there are too few pieces, or if the supplier's orders record no return at all: then it is unknown, not 0.</summary>
    public double? ReturnShare { get; init; }

    /// <summary>Lower end of Wilson's 95 % interval.</summary>
    public double? ReturnLower { get; init; }

    /// <summary>Upper end.</summary>
    public double? ReturnUpper { get; init; }

    /// <summary>Why there is no share of returns; null when there is one.</summary>
    public string? ReturnMissing { get; init; }

    /// <summary>Parts fitted on known units and followed for 90 days.</summary>
    public required long Followed { get; init; }

    /// <summary>Of them at fault again on the same unit within 90 days.</summary>
    public required long Failed { get; init; }

    /// <summary>Failed / followed, or null if there are too few parts.</summary>
    public double? FailedShare { get; init; }

    /// <summary>Lower end of Wilson's 95 % interval.</summary>
    public double? FailedLower { get; init; }

    /// <summary>Upper end.</summary>
    public double? FailedUpper { get; init; }

    /// <summary>Parts of the same component from all other suppliers, followed for 90 days; for all components null, because each supplier has its own mix.</summary>
    public long? OthersFollowed { get; init; }

    /// <summary>Of them failed.</summary>
    public long? OthersFailed { get; init; }

    /// <summary>Share failed here / share failed among the others' parts of the same component, or null if none of theirs failed, or there are none.</summary>
    public double? Ratio { get; init; }

    /// <summary>Lower end of its exact 95 % interval (Przyborowski and Wilenski 1940).</summary>
    public double? RatioLower { get; init; }

    /// <summary>Upper end, or null if open.</summary>
    public double? RatioUpper { get; init; }

    /// <summary>Failures expected if the supplier's parts failed as everybody's of the same component do, its own included.</summary>
    public required double Expected { get; init; }

    /// <summary>Failed / expected, pulled towards what all suppliers and components show.</summary>
    public double? ShrunkRatio { get; init; }

    /// <summary>Lower end of its interval.</summary>
    public double? ShrunkLower { get; init; }

    /// <summary>Upper end of its interval.</summary>
    public double? ShrunkUpper { get; init; }

    /// <summary>Chance of so many failures or more, given all failures of the component and each supplier's parts, or null if there is no other supplier to compare with.</summary>
    public double? P { get; init; }

    /// <summary>The same after Benjamini and Hochberg over all suppliers and components compared.</summary>
    public double? Q { get; init; }

    /// <summary>Share of false discoveries within 10 %, at least 1.5 times the share of the others, three failures or more.</summary>
    public required bool StandsOut { get; init; }

    /// <summary>Why there is no share of failures; null when there is one.</summary>
    public string? Missing { get; init; }
}

/// <summary>Pieces and parts of one supplier and component.</summary>
/// <param name="Supplier">Supplier.</param>
/// <param name="Component">Component, or null for all.</param>
/// <param name="Pieces">Pieces received.</param>
/// <param name="ToldPieces">Of them on lines that tell whether they were sent back.</param>
/// <param name="PiecesReturned">Sent back.</param>
/// <param name="Followed">Parts followed for 90 days after being fitted.</param>
/// <param name="Failed">Of them replaced again by then.</param>
public sealed record SupplierCount(string Supplier, string? Component, long Pieces, long ToldPieces, long PiecesReturned, long Followed, long Failed)
{
    /// <summary>Reads the counts of a session in which the supplier tables were built.</summary>
    public static IReadOnlyList<SupplierCount> Read(Database database) =>
        database.ReadTable<SupplierCount>("supplier_counts");
}
