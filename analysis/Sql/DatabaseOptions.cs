namespace PartsSignal.Analysis.Sql;

/// <summary>Limits of one DuckDB session.</summary>
public sealed record DatabaseOptions
{
    /// <summary>Memory DuckDB may use before it spills, in its own notation. Default 512MB.</summary>
    public string MemoryLimit { get; init; } = "512MB";

    /// <summary>Worker threads, 1 or more. Default: the processors there are.</summary>
    public int Threads { get; init; } = Environment.ProcessorCount;

    /// <summary>File that holds the session's tables, so that they need not stand in memory; null: they do.</summary>
    public string? File { get; init; }

    /// <summary>The only folders whose files the session may read and write, besides the one for spilling; null: any.</summary>
    public IReadOnlyList<string>? Folders { get; init; }

    /// <summary>Folder for spilling; null: none.</summary>
    public string? SpillFolder { get; init; }
}
