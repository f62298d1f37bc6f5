namespace PartsSignal.Analysis.Sql;

/// <summary>How a table comes to be; a file says so in its leading comment, <c>-- materialize: view</c>.</summary>
public enum Materialization
{
    /// <summary>Made once. The default.</summary>
    Table,

    /// <summary>Nothing is made; later queries read through it. In a session that holds little it is a table.</summary>
    View,

    /// <summary>A view of the current span of days, for a table that is filled <see cref="ByDaySpan"/>.</summary>
    DaySpanView,

    /// <summary>A store table filled one span of days after the other, so that its memory does not grow with the years.</summary>
    ByDaySpan,

    /// <summary>A table that is published as a result of its own.</summary>
    Result,
}

/// <summary>One table that a query makes. The table is named as the file.</summary>
/// <param name="Path">The query under <c>Sql/</c>.</param>
/// <param name="Materialization">How the table comes to be.</param>
/// <param name="Reads">Tables that the query or its checks read, in ordinal order.</param>
public sealed record SqlModel(string Path, Materialization Materialization, IReadOnlyList<string> Reads)
{
    private const string Directive = "-- materialize: ";

    /// <summary>Name of the table.</summary>
    public string Table { get; } = System.IO.Path.GetFileNameWithoutExtension(Path);

    /// <summary>True for a table of the store, which is held to its contract's columns.</summary>
    public bool IsStored => Path.StartsWith("marts/", StringComparison.Ordinal);

    /// <summary>True where later queries read through it.</summary>
    public bool IsView => Materialization is Materialization.View or Materialization.DaySpanView;

    /// <summary>The query.</summary>
    public string Text => SqlText.Read(Path);

    /// <summary>The query of offending rows; the file need not be there.</summary>
    public string Checks => Path.Replace(".sql", ".checks.sql", StringComparison.Ordinal);

    /// <summary>Reads one file.</summary>
    /// <exception cref="InvalidDataException">The file says how to make its table in words that mean nothing here.</exception>
    internal static SqlModel Load(string path)
    {
        string text = SqlText.Read(path);
        string? said = text.Split('\n').TakeWhile(l => l.StartsWith("--", StringComparison.Ordinal))
            .FirstOrDefault(l => l.StartsWith(Directive, StringComparison.Ordinal))?[Directive.Length..].Trim();
        Materialization how = said switch
        {
            null or "table" => Materialization.Table,
            "view" => Materialization.View,
            "view of a day span" => Materialization.DaySpanView,
            "by day span" => Materialization.ByDaySpan,
            "result" => Materialization.Result,
            _ => throw new InvalidDataException($"{path}: '{said}' is no way to materialize a table."),
        };
        var model = new SqlModel(path, how, []);
        var reads = new SortedSet<string>(SqlReferences.TablesRead(text), StringComparer.Ordinal);
        if (SqlText.TryRead(model.Checks) is { } checks)
        {
            reads.UnionWith(SqlReferences.TablesRead(checks));
            reads.Remove(model.Table);
        }

        return model with { Reads = [.. reads] };
    }
}
