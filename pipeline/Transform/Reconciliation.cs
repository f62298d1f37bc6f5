using PartsSignal.Analysis.Sql;

namespace PartsSignal.Pipeline.Transform;

/// <summary>What became of the rows of one file, or of all: read = loaded + duplicate + replaced + rejected.</summary>
/// <param name="File">Its name.</param>
/// <param name="Kind">Kind of its rows.</param>
/// <param name="Read">Data rows.</param>
/// <param name="Loaded">In the store, or merged into it.</param>
/// <param name="Duplicate">The same row again.</param>
/// <param name="Replaced">Told anew by a later row.</param>
/// <param name="Rejected">Could not be used; see the rejects.</param>
internal sealed record FileCounts(string File, string Kind, long Read, long Loaded, long Duplicate, long Replaced, long Rejected)
{
    /// <summary>True when every row is accounted for.</summary>
    public bool Balances => Read == Loaded + Duplicate + Replaced + Rejected;
}

/// <summary>The books of one load.</summary>
/// <param name="Files">A line a file, in the order of the sources.</param>
internal sealed record Reconciliation(IReadOnlyList<FileCounts> Files)
{
    /// <summary>All files together.</summary>
    public FileCounts Total { get; } = new(
        "all files", "", Files.Sum(f => f.Read), Files.Sum(f => f.Loaded), Files.Sum(f => f.Duplicate), Files.Sum(f => f.Replaced), Files.Sum(f => f.Rejected));

    /// <summary>Reads them from the session's <c>loads</c>.</summary>
    public static Reconciliation Read(Database database) => new(database.Query("from loads", r => new FileCounts(
        r.GetString(0), r.GetString(2), r.GetInt64(3), r.GetInt64(4), r.GetInt64(5), r.GetInt64(6), r.GetInt64(7))));

    /// <summary>Holds the load to its books.</summary>
    /// <exception cref="InvalidDataException">A file's rows do not add up; every such file is named.</exception>
    public void RequireBalance()
    {
        string[] faults = [.. Files.Where(f => !f.Balances).Select(f =>
            $"{f.File}: read {f.Read}, but loaded {f.Loaded} + duplicate {f.Duplicate} + replaced {f.Replaced} + rejected {f.Rejected}")];
        if (faults.Length > 0)
        {
            throw new InvalidDataException("The books do not balance, nothing was published. " + string.Join("; ", faults));
        }
    }
}
