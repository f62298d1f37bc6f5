using System.Globalization;
using System.Text.RegularExpressions;

namespace PartsSignal.EndToEnd.Tests;

/// <summary>The published tables are the documented ones, column by column, and hold no figure that is none.</summary>
[Collection(RunSmallShopFixture.Collection)]
public sealed partial class ResultTablesTests(RunSmallShopFixture shop)
{
    [Fact]
    public void Results_EveryTable_HasExactlyTheColumnsThatAreDocumented()
    {
        Dictionary<string, string[]> documented = Documented();
        string[] tables = [.. Tables().Select(Path.GetFileNameWithoutExtension).OfType<string>()];
        Assert.Equal(documented.Keys.Order(StringComparer.Ordinal), tables.Order(StringComparer.Ordinal));
        Assert.All(Tables(), file =>
        {
            string name = Path.GetFileNameWithoutExtension(file);
            string[] columns = [.. File.ReadLines(file).First().Split(',').Order(StringComparer.Ordinal)];
            Assert.Equal($"{name}: {string.Join(", ", documented[name].Order(StringComparer.Ordinal))}", $"{name}: {string.Join(", ", columns)}");
        });
    }

    [Fact]
    public void Results_EveryCell_IsNoNaNAndNoInfinity() => Assert.All(Tables(), file =>
        Assert.DoesNotContain(
            File.ReadLines(file).SelectMany(l => l.Split(',')),
            cell => double.TryParse(cell, NumberStyles.Float, CultureInfo.InvariantCulture, out double number) && !double.IsFinite(number)));

    [Fact]
    public void Pages_EveryText_ShowsNoNaNAndNoInfinity() => Assert.All(
        Directory.EnumerateFiles(Path.Combine(shop.Out, "reports"), "*.*", SearchOption.AllDirectories).Where(f => f.EndsWith(".html", StringComparison.Ordinal) || f.EndsWith(".txt", StringComparison.Ordinal)),
        file => Assert.DoesNotMatch(NoFigure(), Scripts().Replace(File.ReadAllText(file), "")));

    private IEnumerable<string> Tables() => Directory.EnumerateFiles(Path.Combine(shop.Out, "results"), "*.csv").Order(StringComparer.Ordinal);

    // "### table" begins a section; the first cells of its rows name the columns.
    private static Dictionary<string, string[]> Documented()
    {
        string text = File.ReadAllText(Path.Combine(RepositoryFolder.Root, "analysis", "Sql", "results", "README.md"));
        return Heading().Split(text).Skip(1).Chunk(2).ToDictionary(
            part => part[0],
            part => Row().Matches(part[1]).Select(m => m.Groups[1].Value).Where(c => c is not "column" and not "---")
                .SelectMany(c => c.Split(',', StringSplitOptions.TrimEntries)).ToArray(),
            StringComparer.Ordinal);
    }

    [GeneratedRegex(@"^### (\w+)$", RegexOptions.Multiline)]
    private static partial Regex Heading();

    [GeneratedRegex(@"^\| ([^|]+) \|", RegexOptions.Multiline)]
    private static partial Regex Row();

    [GeneratedRegex(@"\b(NaN|Infinity)\b|∞", RegexOptions.None)]
    private static partial Regex NoFigure();

    [GeneratedRegex("<script.*?</script>", RegexOptions.Singleline)]
    private static partial Regex Scripts();
}
