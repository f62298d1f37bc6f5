using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Understanding;

namespace PartsSignal.Pipeline.Bench;

/// <summary>A file of the shop that is not in the books of the last update.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Reason">Why, in a sentence.</param>
internal sealed record UnreadFile(string Name, string Reason)
{
    /// <summary>All of them, by name.</summary>
    /// <param name="shop">The shop.</param>
    /// <param name="inBooks">Names of the files in the books.</param>
    /// <param name="updated">When the last update ended, UTC.</param>
    /// <param name="cancellation">Stops.</param>
    public static IReadOnlyList<UnreadFile> Of(ShopFolder shop, IReadOnlySet<string> inBooks, DateTime updated, CancellationToken cancellation)
    {
        try
        {
            ShopSettings settings = ShopFile.Load(shop.Files);
            return [.. ShopTables.In(shop.Files, settings.Limits).Where(f => !inBooks.Contains(f.Name)).Select(f => new UnreadFile(f.Name, Why(f, settings, updated, cancellation)))];
        }
        catch (BadInputException)
        {
            // Broken settings are told where they can be mended.
            return [];
        }
    }

    private static string Why(InputFile file, ShopSettings settings, DateTime updated, CancellationToken cancellation)
    {
        try
        {
            SampledTable[] tables = [.. TableSampler.Read(file, settings.Limits, cancellation)];
            return Array.TrueForAll(tables, t => t.Refusal is not null) && tables.Length > 0 ? Without(file.Name, tables[0].Refusal!)
                : File.GetLastWriteTimeUtc(file.Path) > updated ? "Added after the last update. Update the figures to read it."
                : settings.Answers.Any(a => a.Value == "none" && a.Key.EndsWith("/kind", StringComparison.Ordinal) && (a.Key.StartsWith(file.Name + "/", StringComparison.Ordinal) || a.Key.StartsWith(file.Name + "|", StringComparison.Ordinal))) ? $"Left out, as you answered. {Rows(tables)}"
                : $"Left out: its columns say nothing about calls, parts or stock. {Rows(tables)}";
        }
        catch (FileRefusedException refused)
        {
            return $"Not read. {refused.Fault.Message} {refused.Fault.Suggestion}";
        }
        catch (BadInputException bad)
        {
            return Without(file.Name, bad.Message);
        }
    }

    private static string Without(string name, string message) => "Not read. " + (message.StartsWith(name + ": ", StringComparison.Ordinal) ? message[(name.Length + 2)..] : message);

    private static string Rows(SampledTable[] tables) => $"It has {Counted.Of(tables.Sum(t => t.Sample.Rows), "row")}.";
}
