namespace PartsSignal.Pipeline.Running;

/// <summary>Where everything goes below <c>--out</c>.</summary>
/// <param name="Root">The folder itself.</param>
public sealed record OutputFolder(string Root)
{
    /// <summary>The current store: one folder per table.</summary>
    public string Store => Path.Combine(Root, "store");

    /// <summary>Staged files, by content hash.</summary>
    public string Stage => Path.Combine(Root, "stage");

    /// <summary>Result tables, Parquet and CSV.</summary>
    public string Results => Path.Combine(Root, "results");

    /// <summary>Rows that could not be read, as typed. The only place that holds raw rows.</summary>
    public string Rejects => Path.Combine(Root, "rejects");

    /// <summary>Lists for the owner to answer.</summary>
    public string Review => Path.Combine(Root, "review");

    /// <summary>The predictor.</summary>
    public string Model => Path.Combine(Root, "model");

    /// <summary>Monthly reports, a folder per month.</summary>
    public string Reports => Path.Combine(Root, "reports");

    /// <summary>Order lists and pick lists of the van plan.</summary>
    public string Van => Path.Combine(Root, "van");

    /// <summary>The phone page.</summary>
    public string LookupPage => Path.Combine(Root, "lookup.html");

    /// <summary>The record of the last run.</summary>
    public string RunRecord => Path.Combine(Root, "run.json");

    /// <summary>The key that turns serials and addresses into identifiers; made on the first run.</summary>
    public string Key => Path.Combine(Root, "identity.key");

    /// <summary>The page of the newest month; null: there is none.</summary>
    public string? NewestReport() => Directory.Exists(Reports)
        ? Directory.EnumerateDirectories(Reports).Order(StringComparer.Ordinal)
            .Select(month => Path.Combine(month, "index.html")).LastOrDefault(File.Exists)
        : null;
}
