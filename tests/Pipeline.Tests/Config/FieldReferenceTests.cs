using System.Text;
using PartsSignal.Pipeline.Config;

namespace PartsSignal.Pipeline.Tests.Config;

/// <summary>Keeps the field reference equal to the catalog. PARTSSIGNAL_WRITE_SNAPSHOTS=1 writes it anew.</summary>
public sealed class FieldReferenceTests
{
    [Fact]
    public void FieldsMd_SaysWhatTheCatalogSays()
    {
        string path = Path.Combine(RepositoryFolder.Root, "pipeline", "Config", "FIELDS.md");
        string text = Render();
        if (Environment.GetEnvironmentVariable("PARTSSIGNAL_WRITE_SNAPSHOTS") == "1")
        {
            File.WriteAllText(path, text);
        }

        Assert.Equal(File.ReadAllText(path).ReplaceLineEndings("\n"), text);
    }

    private static string Render()
    {
        var text = new StringBuilder(
            """
            # The columns a shop's files can give

            Made from `FieldCatalog.cs`; a test keeps it true (`PARTSSIGNAL_WRITE_SNAPSHOTS=1` writes it anew). *Needed*: a row without it
            is refused. *Cell that cannot be read*: the row is refused, or the cell counts as unknown. *Tells versions apart*: two rows
            of one job that differ there are two versions of the job. *Personal*: hashed or scrubbed, never stored as typed.


            """.ReplaceLineEndings("\n"));
        foreach (string kind in FieldCatalog.Kinds)
        {
            text.Append($"## {kind}\n\n| field | meaning | read as | unit | staged as | cell that cannot be read | notes |\n| --- | --- | --- | --- | --- | --- | --- |\n");
            foreach (Field f in FieldCatalog.Of(kind))
            {
                string[] notes =
                [
                    .. f.Essential ? ["needed"] : Array.Empty<string>(),
                    .. f.Personal ? ["personal"] : Array.Empty<string>(),
                    .. f.Blank is { } blank ? [$"blank: {blank}"] : Array.Empty<string>(),
                    .. kind == "jobs" && FieldCatalog.IdentityColumns(kind).Intersect(f.Staged.Select(c => c.Name)).Any() ? ["tells versions apart"] : Array.Empty<string>(),
                ];
                string staged = f.Staged.Count == 0 ? "" : $"{f.Table}: {string.Join(", ", f.Staged.Select(c => c.Name))}";
                text.Append($"| {f.Name} | {f.Meaning} | {Words(f.Cleaner.ToString())} | {f.Unit} | {staged} | {(f.RefusesRow ? "row refused" : "unknown")} | {string.Join(", ", notes)} |\n");
            }

            text.Append('\n');
        }

        return text.ToString().TrimEnd('\n') + "\n";
    }

    private static string Words(string name) => string.Concat(name.Select((c, i) => i > 0 && char.IsUpper(c) ? " " + char.ToLowerInvariant(c) : char.ToLowerInvariant(c).ToString()));
}
