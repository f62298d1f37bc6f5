namespace PartsSignal.Pipeline.Core;

/// <summary>Where everything goes below <c>--out</c>.</summary>
/// <param name="Root">The folder itself, or a draft that will take its place.</param>
/// <param name="Published">The folder this one is a draft of; null: it is no draft.</param>
internal sealed record OutputFolder(string Root, OutputFolder? Published = null)
{
    /// <summary>The folder that stays: this one, or the one it is a draft of.</summary>
    public string Kept => Published?.Root ?? Root;

    /// <summary>The current store: one folder per table.</summary>
    public string Store => Path.Combine(Root, "store");

    /// <summary>Staged files, by content hash; a draft adds to those there are.</summary>
    public string Stage => Path.Combine(Kept, "stage");

    /// <summary>What the engine writes when memory runs short; of no use once the program ends.</summary>
    public string Spill => Path.Combine(Kept, "spill");

    /// <summary>The tables between staged rows and store, where a load was asked to keep them.</summary>
    public string Intermediate => Path.Combine(Root, "intermediate.duckdb");

    /// <summary>Result tables, Parquet and CSV.</summary>
    public string Results => Path.Combine(Root, "results");

    /// <summary>Rows that could not be read, as typed. The only place that holds raw rows.</summary>
    public string Rejects => Path.Combine(Kept, "rejects");

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
    public string Key => Path.Combine(Kept, "identity.key");

    /// <summary>Where a file of this folder lies once a draft is published.</summary>
    public string AsPublished(string path) => Published is null ? path : Path.Combine(Published.Root, Path.GetRelativePath(Root, path));

    /// <summary>True when a month has its report, in this folder or in the one it is a draft of.</summary>
    /// <param name="month">As in the folder's name, <c>2026-03</c>.</param>
    public bool HasReport(string month) => Directory.Exists(Path.Combine(Reports, month)) || Published?.HasReport(month) == true;

    /// <summary>The page of the newest month; null: there is none.</summary>
    public string? NewestReport() => Directory.Exists(Reports)
        ? Directory.EnumerateDirectories(Reports).Order(StringComparer.Ordinal)
            .Select(month => Path.Combine(month, "index.html")).LastOrDefault(File.Exists)
        : null;
}
