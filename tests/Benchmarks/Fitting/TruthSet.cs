using System.Text.Json;
using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Understanding.Evidence;

namespace PartsSignal.Benchmarks.Fitting;

/// <summary>A shop's files with their right reading.</summary>
/// <param name="Name">Name of the set.</param>
/// <param name="Origin">Who wrote the files: sets of one origin are held out together.</param>
/// <param name="IsReal">False for invented shops.</param>
/// <param name="Tables">The tables, each with its right answer.</param>
internal sealed record TruthSet(string Name, string Origin, bool IsReal, IReadOnlyList<TruthTable> Tables)
{
    /// <summary>Reads every set of a folder.</summary>
    public static IEnumerable<TruthSet> Read(string folder, bool real)
    {
        foreach (string set in Directory.GetDirectories(folder).Order(StringComparer.Ordinal).Where(d => File.Exists(Path.Combine(d, "truth.json"))))
        {
            using var truth = JsonDocument.Parse(File.ReadAllText(Path.Combine(set, "truth.json")));
            string name = Path.GetFileName(set);
            string origin = real ? truth.RootElement.GetProperty("origin").GetString()!.Split(' ', ',')[0] : name;
            var limits = new ReadingLimits();
            string input = Path.Combine(set, "in");
            var sampled = new List<TableSample>();
            foreach (InputFile file in new InputFiles(input, limits).All.Where(f => !f.Name.EndsWith(".json", StringComparison.Ordinal)))
            {
                try
                {
                    sampled.AddRange(TableSampler.Read(file, limits, CancellationToken.None).Select(t => t.Sample));
                }
                catch (Exception bad) when (bad is Pipeline.Commands.BadInputException)
                {
                    Console.Error.WriteLine($"{name}: {bad.Message}");
                }
            }

            var tables = new List<TruthTable>();
            foreach (JsonElement file in truth.RootElement.GetProperty("files").EnumerateArray())
            {
                string path = file.GetProperty("file").GetString()!;
                string? sheet = file.TryGetProperty("sheet", out JsonElement s) ? s.GetString() : null;
                TableSample? sample = sampled.Find(t => t.File == path && (sheet is null || t.Sheet == sheet));
                if (sample is not null)
                {
                    tables.Add(TruthTable.Read(file, sample));
                }
                else
                {
                    Console.Error.WriteLine($"{name}: {path} {sheet} was not read");
                }
            }

            yield return new TruthSet(name, origin, real, tables);
        }
    }
}

/// <summary>The right reading of a table.</summary>
/// <param name="Sample">The table.</param>
/// <param name="Kind">Its kind.</param>
/// <param name="AlsoRight">Kinds that are right as well.</param>
/// <param name="Columns">Field to the headers that are right for it.</param>
/// <param name="Essential">Fields whose loss hurts.</param>
/// <param name="Forbidden">Header to fields it must never be.</param>
internal sealed record TruthTable(
    TableSample Sample,
    string Kind,
    IReadOnlyList<string> AlsoRight,
    IReadOnlyDictionary<string, IReadOnlyList<string>> Columns,
    IReadOnlyList<string> Essential,
    IReadOnlyDictionary<string, IReadOnlyList<string>> Forbidden)
{
    /// <summary>Whether a column is right for a field.</summary>
    public bool IsRight(ColumnSample column, string field) =>
        Columns.TryGetValue(field, out IReadOnlyList<string>? headers) && headers.Any(h => Plain(h) == Plain(column.Name) || column.Names.Any(n => Plain(n) == Plain(h)));

    /// <summary>Reads one of the files of a truth.</summary>
    public static TruthTable Read(JsonElement file, TableSample sample)
    {
        string[] Texts(string key) => file.TryGetProperty(key, out JsonElement list) ? [.. list.EnumerateArray().Select(t => t.GetString()!)] : [];
        Dictionary<string, IReadOnlyList<string>> Lists(string key) => file.TryGetProperty(key, out JsonElement all)
            ? all.EnumerateObject().ToDictionary(f => f.Name, f => (IReadOnlyList<string>)[.. f.Value.EnumerateArray().Select(t => t.GetString()!)], StringComparer.Ordinal)
            : [];
        return new TruthTable(sample, file.GetProperty("kind").GetString()!, Texts("kind_ok"), Lists("columns"), Texts("essential"), Lists("forbidden"));
    }

    private static string Plain(string text) => string.Join(' ', text.Replace("\uFEFF", "", StringComparison.Ordinal).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)).ToUpperInvariant();
}
