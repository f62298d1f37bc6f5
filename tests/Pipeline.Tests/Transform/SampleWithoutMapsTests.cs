using System.Text.Json.Nodes;
using PartsSignal.Analysis.Sql;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Publishing;
using PartsSignal.Pipeline.Running;
using PartsSignal.Pipeline.Understanding;

namespace PartsSignal.Pipeline.Tests.Transform;

/// <summary>The committed sample with a shop.json of name, vans and budgets only: everything that its maps say is found or asked.</summary>
public sealed class SampleWithoutMapsTests : IDisposable
{
    private readonly string _root = Directory.CreateTempSubdirectory("partssignal-unmapped-").FullName;

    public void Dispose() => Directory.Delete(_root, recursive: true);

    [LongFact]
    public async Task Load_WithoutMapsAndTwoAnswers_GivesTheSameStore()
    {
        string input = Path.Combine(_root, "shop");
        Directory.CreateDirectory(input);
        foreach (string file in Directory.GetFiles(RepositoryFolder.SampleShop).Where(f => Path.GetExtension(f) is ".csv" or ".tsv"))
        {
            File.Copy(file, Path.Combine(input, Path.GetFileName(file)));
        }

        JsonObject shop = JsonNode.Parse(File.ReadAllText(Path.Combine(RepositoryFolder.SampleShop, "shop.json")))!.AsObject();
        shop.Remove("sources");
        shop["answers"] = new JsonObject { ["jobs-2026.csv/field/price"] = "Part1 Unit", ["van-count-2026-10-30.csv/field/counted_on"] = "On" };
        File.WriteAllText(Path.Combine(input, "shop.json"), shop.ToJsonString());
        (ShopSettings found, _) = ProposedMaps.Complete(input, ShopFile.Load(input), TestContext.Current.CancellationToken);
        var mapped = new OutputFolder(Path.Combine(_root, "mapped"));
        var unmapped = new OutputFolder(Path.Combine(_root, "unmapped"));
        await ShopLoad.RunAsync(RepositoryFolder.SampleShop, mapped, ShopFile.Load(RepositoryFolder.SampleShop), TimeProvider.System, null, TestContext.Current.CancellationToken);
        Directory.CreateDirectory(unmapped.Root);
        File.Copy(mapped.Key, unmapped.Key);
        await ShopLoad.RunAsync(input, unmapped, found, TimeProvider.System, null, TestContext.Current.CancellationToken);
        using var database = Database.Open(new DatabaseOptions { Threads = 1 });
        string[] differ = [.. StoreTables.Names.Where(t => database.Query(
            $"select count(*) from (({Rows(mapped, t)} except all {Rows(unmapped, t)}) union all ({Rows(unmapped, t)} except all {Rows(mapped, t)}))", r => r.GetInt64(0))[0] > 0)];
        Assert.Equal([], differ);
    }

    private static string Rows(OutputFolder output, string table) =>
        $"from read_parquet({Database.Literal(Path.Combine(StoreSwap.Resolve(output.Store), table, "**", "*.parquet"))}, hive_partitioning = false)";
}
