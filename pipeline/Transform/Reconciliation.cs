using PartsSignal.Analysis.Sql;

namespace PartsSignal.Pipeline.Transform;

/// <summary>Row counts of one file or of all files: read = loaded + duplicate + replaced + rejected.</summary>
/// <param name="File">Its name.</param>
/// <param name="Kind">Kind of its rows.</param>
/// <param name="Read">Data rows.</param>
/// <param name="Loaded">In the store, or merged into it.</param>
/// <param name="Duplicate">Exact copies of another row.</param>
/// <param name="Replaced">Superseded by a newer version of the same row.</param>
/// <param name="Rejected">Could not be used; see the rejects.</param>
internal sealed record FileCounts([Column("source_file")] string File, string Kind, [Column("rows_read")] long Read, long Loaded, long Duplicate, long Replaced, long Rejected)
{
    /// <summary>True when every row is accounted for.</summary>
    public bool Balances => Read == Loaded + Duplicate + Replaced + Rejected;
}

/// <summary>Reconciles the rows of one load.</summary>
/// <param name="Files">One entry per file, in source order.</param>
internal sealed record Reconciliation(IReadOnlyList<FileCounts> Files)
{
    /// <summary>All files together.</summary>
    public FileCounts Total { get; } = new(
        "all files", "", Files.Sum(f => f.Read), Files.Sum(f => f.Loaded), Files.Sum(f => f.Duplicate), Files.Sum(f => f.Replaced), Files.Sum(f => f.Rejected));

    /// <summary>Reads the counts from the table <c>loads</c>.</summary>
    public static Reconciliation Read(Database database) => new(database.ReadTable<FileCounts>("loads"));

    /// <summary>Throws if any row is unaccounted for.</summary>
    /// <exception cref="InvalidDataException">A file's rows do not add up; every such file is named.</exception>
    public void RequireBalance()
    {
        string[] faults = [.. Files.Where(f => !f.Balances).Select(f =>
            $"{f.File}: read {f.Read}, but loaded {f.Loaded} + duplicate {f.Duplicate} + replaced {f.Replaced} + rejected {f.Rejected}")];
        if (faults.Length > 0)
        {
            throw new InvalidDataException("The row counts do not add up, so nothing was published. " + string.Join("; ", faults));
        }
    }
}
