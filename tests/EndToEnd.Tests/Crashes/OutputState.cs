using System.Security.Cryptography;
using System.Text.Json.Nodes;
using PartsSignal.Analysis.Sql;
using PartsSignal.Pipeline.Publishing;

namespace PartsSignal.EndToEnd.Tests.Crashes;

/// <summary>What an output folder answers: rows of each table of its store, its books, its results.</summary>
/// <param name="Store">Table and rows; empty: there is no store.</param>
/// <param name="Books">The section <c>rows</c> of the record; null: there is none.</param>
/// <param name="Results">Name and hash of each file of results.</param>
internal sealed record OutputState(string Store, string? Books, string Results)
{
    private static readonly string[] Expected =
    [
        "identity.key", "lookup.html", "model", "rejects", "reports", "results", "review", "run.json", "stage", "store", "store.lock", "stores", "van",
    ];

    /// <summary>Reads an output folder as any reader does.</summary>
    public static OutputState Of(string folder)
    {
        string store = "";
        string current = Path.Combine(folder, "store");
        if (Directory.Exists(current))
        {
            using Database database = Database.Open();
            CurrentStore.Attach(database, current);
            store = string.Join(' ', StoreTables.Names.Select(t => $"{t}={database.Count(t)}"));
        }

        string record = Path.Combine(folder, "run.json");
        string results = Path.Combine(folder, "results");
        return new OutputState(
            store,
            File.Exists(record) ? JsonNode.Parse(File.ReadAllText(record))!["rows"]!.ToJsonString() : null,
            !Directory.Exists(results) ? "" : string.Join('\n', Directory.EnumerateFiles(results).Order(StringComparer.Ordinal)
                .Select(f => Path.GetFileName(f) + " " + Convert.ToHexString(SHA256.HashData(File.ReadAllBytes(f))))));
    }

    /// <summary>Files and folders that no complete run leaves.</summary>
    public static IEnumerable<string> Leftovers(string folder) => Directory.EnumerateFileSystemEntries(folder).Select(Path.GetFileName).Except(Expected)
        .Concat(Directory.EnumerateFileSystemEntries(folder, "*", SearchOption.AllDirectories).Where(f => Path.GetExtension(f) is ".new" or ".old" or ".part" or ".unfinished" or ".tmp"))!;
}
