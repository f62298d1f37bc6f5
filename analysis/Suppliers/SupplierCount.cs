using PartsSignal.Analysis.Sql;

namespace PartsSignal.Analysis.Suppliers;

/// <summary>Pieces and parts of one supplier and component.</summary>
/// <param name="Supplier">Supplier.</param>
/// <param name="Component">Component; null: all.</param>
/// <param name="Pieces">Pieces received.</param>
/// <param name="PiecesReturned">Sent back.</param>
/// <param name="Followed">Parts followed for 90 days after being fitted.</param>
/// <param name="Failed">Of them replaced again by then.</param>
public sealed record SupplierCount(string Supplier, string? Component, long Pieces, long PiecesReturned, long Followed, long Failed)
{
    /// <summary>Reads the counts of a session in which the supplier tables were built.</summary>
    public static IReadOnlyList<SupplierCount> Read(Database database) =>
        database.ReadTable<SupplierCount>("supplier_counts");
}
