using System.Diagnostics;
using PartsSignal.Analysis.Sql;

namespace PartsSignal.EndToEnd.Tests;

/// <summary>The store is no private format: another engine reads the same files and counts the same.</summary>
[Collection(RunSmallShopFixture.Collection)]
public sealed class SecondEngineTests(RunSmallShopFixture shop)
{
    private string Store => Path.Combine(shop.Out, "store");

    [SecondEngineFact]
    public async Task Store_ReadByAnotherEngine_CountsTheSame()
    {
        string[] theirs = await CountAsync();
        Assert.Equal(Ours(), theirs.Order(StringComparer.Ordinal));
        Assert.Contains(theirs, line => line.StartsWith("jobs|2024|fixed_with_part|", StringComparison.Ordinal));
    }

    [Fact]
    public void Store_JobsAndOrders_StandInAFolderAYear()
    {
        using Database database = Database.Open();
        StoreTables.Attach(database, Store);
        foreach (string table in StoreTables.Names.Where(t => StoreTables.DayOf(t) is not null))
        {
            string files = Database.Literal(Path.Combine(Store, table, "*", "*.parquet"));
            Assert.Empty(database.Query(
                $"from read_parquet({files}, hive_partitioning = true) select count(*) as n where year <> year({StoreTables.DayOf(table)}) having n > 0", r => r.GetInt64(0)));
            Assert.True(Directory.GetDirectories(Path.Combine(Store, table), "year=20*").Length > 3);
        }
    }

    private string[] Ours()
    {
        using Database database = Database.Open();
        StoreTables.Attach(database, Store);
        string sql = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "TestData", "count-store.sql"));
        return [.. database.Query(sql, r => r.GetString(0)).Order(StringComparer.Ordinal)];
    }

    private async Task<string[]> CountAsync()
    {
        var start = new ProcessStartInfo("node", [Path.Combine(SecondEngineFactAttribute.Folder, "count-store.mjs"), Store])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        using Process node = Process.Start(start)!;
        Task<string> errors = node.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        string text = await node.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        await node.WaitForExitAsync(TestContext.Current.CancellationToken);
        Assert.True(node.ExitCode == 0, await errors);
        return text.Split('\n', StringSplitOptions.RemoveEmptyEntries);
    }
}
