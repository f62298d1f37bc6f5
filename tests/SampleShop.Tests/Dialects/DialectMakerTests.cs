using System.Globalization;
using System.Text.Json;
using PartsSignal.SampleShop.Dialects;

namespace PartsSignal.SampleShop.Tests.Dialects;

public sealed class DialectMakerTests : IDisposable
{
    private const long FirstSeed = 1001;
    private const int Dialects = 12;

    private readonly string _folder = Directory.CreateTempSubdirectory("dialects-").FullName;

    public void Dispose() => Directory.Delete(_folder, true);

    [Fact]
    public void Write_SameSeedInAnotherLocale_GivesTheSameBytes()
    {
        CultureInfo before = CultureInfo.CurrentCulture;
        try
        {
            for (long seed = FirstSeed; seed < FirstSeed + Dialects; seed++)
            {
                CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
                string first = Write(seed, "first");
                CultureInfo.CurrentCulture = Foreign();
                string second = Write(seed, "second");
                string[] names = [.. Names(first)];
                Assert.Equal(names, Names(second));
                Assert.All(names, n => Assert.True(File.ReadAllBytes(Path.Combine(first, n)).AsSpan().SequenceEqual(File.ReadAllBytes(Path.Combine(second, n))), $"seed {seed}, {n}"));
            }
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void Write_AnySeed_TruthNamesEveryFileAndOnlyHeadersThatStandInIt()
    {
        for (long seed = FirstSeed; seed < FirstSeed + Dialects; seed++)
        {
            string shop = Write(seed, "shop");
            using var truth = JsonDocument.Parse(File.ReadAllText(Path.Combine(shop, "truth.json")));
            JsonElement[] tables = [.. truth.RootElement.GetProperty("files").EnumerateArray()];
            Assert.Equal(
                Directory.EnumerateFiles(Path.Combine(shop, "in")).Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal),
                tables.Select(t => t.GetProperty("file").GetString()!).Distinct().Order(StringComparer.Ordinal));
            Assert.Contains(tables, t => t.GetProperty("kind").GetString() == "jobs");
            Assert.All(tables, table => Assert.All(table.GetProperty("essential").EnumerateArray(), field => Assert.NotEmpty(table.GetProperty("columns").GetProperty(field.GetString()!).EnumerateArray())));
            foreach (JsonElement table in tables.Where(t => t.GetProperty("sheet").ValueKind == JsonValueKind.Null))
            {
                string text = Text(Path.Combine(shop, "in", table.GetProperty("file").GetString()!));
                Assert.All(
                    table.GetProperty("columns").EnumerateObject().SelectMany(c => c.Value.EnumerateArray()),
                    header => Assert.Contains(header.GetString()!.Replace("\"", "\"\"", StringComparison.Ordinal), text, StringComparison.Ordinal));
            }
        }
    }

    [Fact]
    public void Write_ManySeeds_DifferInLanguageLayoutAndTrade()
    {
        Dialect[] dialects = [.. Enumerable.Range(0, 1500).Select(i => DialectPicker.Pick(FirstSeed + i))];
        Assert.Equal(DialectWords.Languages.Order(StringComparer.Ordinal), dialects.Select(d => d.Language).Distinct().Order(StringComparer.Ordinal));
        Assert.Equal(DialectWords.Trades.Count, dialects.Select(d => d.Trade).Distinct().Count());
        Assert.Equal(Enum.GetValues<PartLayout>(), dialects.Select(d => d.Parts).Distinct().Order());
        Assert.Equal(Enum.GetValues<PartNaming>(), dialects.Select(d => d.Naming).Distinct().Order());
        Assert.Equal(Enum.GetValues<Ending>(), dialects.Select(d => d.End).Distinct().Order());
        Assert.Equal(Enum.GetValues<JobKey>(), dialects.Select(d => d.Key).Distinct().Order());
        Assert.Equal(Enum.GetValues<Container>(), dialects.Select(d => d.Container).Distinct().Order());
        Assert.Equal(Enum.GetValues<HeaderStyle>(), dialects.Select(d => d.Style).Distinct().Order());
    }

    // the tests run without the tables of other locales, so this one is made by hand
    private static CultureInfo Foreign()
    {
        var culture = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        culture.NumberFormat.NumberDecimalSeparator = ",";
        culture.NumberFormat.NegativeSign = "~";
        culture.DateTimeFormat.DateSeparator = "·";
        culture.DateTimeFormat.TimeSeparator = "·";
        return culture;
    }

    private static IEnumerable<string> Names(string folder) =>
        Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories).Select(p => Path.GetRelativePath(folder, p)).Order(StringComparer.Ordinal);

    private static string Text(string path)
    {
        byte[] bytes = File.ReadAllBytes(path);
        if (bytes is [0xFF, 0xFE, ..])
        {
            return System.Text.Encoding.Unicode.GetString(bytes);
        }

        string text = System.Text.Encoding.UTF8.GetString(bytes);
        return text.Contains('\uFFFD', StringComparison.Ordinal) ? CodePagesText(bytes) : text;
    }

    // headers of a file in a one-byte encoding: Polish letters tell its code page
    private static string CodePagesText(byte[] bytes) => string.Concat(new[] { 1250, 1252 }.Select(page => System.Text.CodePagesEncodingProvider.Instance.GetEncoding(page)!.GetString(bytes)));

    private string Write(long seed, string name)
    {
        string folder = Path.Combine(_folder, name);
        if (Directory.Exists(folder))
        {
            Directory.Delete(folder, true);
        }

        DialectMaker.Write(seed, folder);
        return folder;
    }
}
