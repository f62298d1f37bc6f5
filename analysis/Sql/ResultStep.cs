namespace PartsSignal.Analysis.Sql;

/// <summary>One table that SQL alone builds over the store.</summary>
/// <param name="Path">File below <c>Sql/results/</c> without its ending, for example <c>rates/observation</c>.</param>
/// <param name="Published">True: a result of its own; false: only a stage for later tables.</param>
public sealed record ResultStep(string Path, bool Published = true)
{
    /// <summary>Name of the table: the file's.</summary>
    public string Table => Path[(Path.LastIndexOf('/') + 1)..];

    /// <summary>The query.</summary>
    public string Sql => $"results/{Path}.sql";

    /// <summary>The query of offending rows.</summary>
    public string Checks => $"results/{Path}.checks.sql";
}
