namespace PartsSignal.Pipeline.Core;

/// <summary>The layout of the output folder, <c>--out</c>.</summary>
/// <param name="Root">The folder itself, or a draft of it.</param>
/// <param name="Published">The folder this one is a draft of, or null if it is not a draft.</param>
internal sealed record OutputFolder(string Root, OutputFolder? Published = null)
{
    /// <summary>The permanent folder: this one, or the one it is a draft of.</summary>
    public string Kept => Published?.Root ?? Root;

    /// <summary>The current store, one folder per table.</summary>
    public string Store => Path.Combine(Root, "store");

    /// <summary>Staged files by content hash; a draft shares those of its permanent folder.</summary>
    public string Stage => Path.Combine(Kept, "stage");

    /// <summary>Temporary files of the engine, useless once the program ends.</summary>
    public string Spill => Path.Combine(Kept, "spill");

    /// <summary>The intermediate tables of the current store, if the load that made it was asked to keep them.</summary>
    public string Intermediate => Path.Combine(Root, "intermediate.duckdb");

    /// <summary>Result tables, Parquet and CSV.</summary>
    public string Results => Path.Combine(Root, "results");

    /// <summary>Rows that were refused, as typed. The only folder with raw rows.</summary>
    public string Rejects => Path.Combine(Kept, "rejects");

    /// <summary>Lists for the owner to answer.</summary>
    public string Review => Path.Combine(Root, "review");

    /// <summary>The predictor.</summary>
    public string Model => Path.Combine(Root, "model");

    /// <summary>Monthly reports, one folder per month.</summary>
    public string Reports => Path.Combine(Root, "reports");

    /// <summary>Order lists and pick lists of the van plan.</summary>
    public string Van => Path.Combine(Root, "van");

    /// <summary>The phone page.</summary>
    public string LookupPage => Path.Combine(Root, "lookup.html");

    /// <summary>The record of the last run.</summary>
    public string RunRecord => Path.Combine(Root, "run.json");

    /// <summary>The key that turns serials and addresses into identifiers; created on the first run.</summary>
    public string Key => Path.Combine(Kept, "identity.key");

    /// <summary>Keyed hashes of the customers who are to be forgotten.</summary>
    public string Forgotten => Path.Combine(Kept, "forgotten.txt");

    /// <summary>The path of a file after the draft is published.</summary>
    public string AsPublished(string path) => Published is null ? path : Path.Combine(Published.Root, Path.GetRelativePath(Root, path));

    /// <summary>True if a month has a report, here or in the folder this is a draft of.</summary>
    /// <param name="month">The folder's name, <c>2026-03</c>.</param>
    public bool HasReport(string month) => Directory.Exists(Path.Combine(Reports, month)) || Published?.HasReport(month) == true;

    /// <summary>The page of the newest month, or null if there is none.</summary>
    public string? NewestReport() => Directory.Exists(Reports)
        ? Directory.EnumerateDirectories(Reports).Order(StringComparer.Ordinal)
            .Select(month => Path.Combine(month, "index.html")).LastOrDefault(File.Exists)
        : null;
}
