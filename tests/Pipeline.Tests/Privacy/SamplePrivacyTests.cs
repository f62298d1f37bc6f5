using System.Text.RegularExpressions;
using CsvHelper;
using PartsSignal.Analysis.Sql;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Staging;
using PartsSignal.Pipeline.Staging.Tables;
using PartsSignal.Pipeline.Tests.Staging;

namespace PartsSignal.Pipeline.Tests.Privacy;

public sealed class SamplePrivacyTests
{
    [SlowFact]
    public async Task StageAsync_SampleShop_NothingPersonalInAnyStagedTable()
    {
        string folder = Directory.CreateTempSubdirectory("partssignal-").FullName;
        try
        {
            ShopSettings settings = ShopFile.Load(RepositoryFolder.SampleShop);
            var stager = new Stager(new OutputFolder(folder), settings, StagingRig.Tools, TableStagers.Make);
            foreach (SourceFile source in SourceFile.Find(RepositoryFolder.SampleShop, settings))
            {
                await stager.StageAsync(source, 1, CancellationToken.None);
            }

            string all = string.Join('\n', Texts(Path.Combine(folder, "stage"))).ToLowerInvariant();
            string[] planted = [.. Planted().Distinct(StringComparer.Ordinal)];
            Assert.True(planted.Length > 100);
            Assert.All(planted, p => Assert.DoesNotContain(p.ToLowerInvariant(), all, StringComparison.Ordinal));
            Assert.DoesNotMatch(new Regex(@"[\w.]+@[\w.]+\.\w+"), all);
            Assert.DoesNotMatch(new Regex(@"(?<!\w)0\d{3} ?\d{3} ?\d{4}(?!\w)"), all);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static IEnumerable<string> Planted()
    {
        using var csv = CsvReader.FromFile(Path.Combine(RepositoryFolder.SampleShop, "truth", "planted.csv"), new CsvReaderOptions { Separator = ',' });
        while (csv.Read())
        {
            string text = csv.GetString("text");
            // What people add behind an address ("back door", the town) says nothing by itself.
            yield return char.IsAsciiDigit(text[0]) && text.Contains(',') ? text[..text.IndexOf(',')] : text;
        }
    }

    private static IEnumerable<string> Texts(string stage)
    {
        using Database database = Database.Open();
        foreach (string file in Directory.EnumerateFiles(stage, "*.parquet", SearchOption.AllDirectories))
        {
            string from = $"from read_parquet({Database.Literal(file)})";
            foreach (string text in database.Query($"{from} select cast(columns(*) as varchar)", r => string.Join('\t', Enumerable.Range(0, r.FieldCount).Select(i => r.IsDBNull(i) ? "" : r.GetString(i)))))
            {
                yield return text;
            }
        }
    }
}
