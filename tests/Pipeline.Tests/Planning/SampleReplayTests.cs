using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.VanPlan;
using PartsSignal.Analysis.VanPlan.Replay;
using PartsSignal.Pipeline.Commands;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Planning;
using PartsSignal.Pipeline.Publishing;

namespace PartsSignal.Pipeline.Tests.Planning;

/// <summary>The committed sample shop and one that no setting was ever chosen on.</summary>
public sealed class SampleReplayTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("partssignal-replay").FullName;

    [SlowFact]
    public Task Replay_CommittedSample_LeadsEveryLargeQuarter() =>
        CheckAsync(Path.Combine(RepositoryFolder.Root, "data-sample"));

    [SlowFact]
    public async Task Replay_FreshSeed_LeadsEveryLargeQuarter()
    {
        string shop = Path.Combine(_folder, "shop");
        await RunAsync("sample", "--jobs", "20000", "--seed", "1303", "--output", shop);
        await CheckAsync(shop);
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private async Task CheckAsync(string input)
    {
        string output = Path.Combine(_folder, "out");
        await RunAsync("load", "--input", input, "--out", output);
        ShopSettings settings = ShopFile.Load(input);
        using var database = Database.Open(new DatabaseOptions { Threads = 1 });
        CurrentStore.Attach(database, Path.Combine(output, "store"));
        ShopData data = ShopDataReader.Read(database, settings.AsOf)!;
        VanPlanOptions options = ShopPlanOptions.From(settings);
        var views = new ShopViews(data, options);
        ReplayEvidence evidence = RollingReplay.Run(data, views, options);
        EvidenceRow[] quarters = [.. EvidenceRow.From(evidence.Rows, options).Where(r => r.Van == "all" && r.Quarter != "all")];
        EvidenceRow[] large = [.. quarters.Where(r => r.Policy == ReplayPolicy.Plan && r.Jobs >= 300)];
        Assert.Equal(options.ReplayQuarters, large.Length);
        Assert.All(large, plan =>
        {
            EvidenceRow plain = quarters.Single(r => r.Policy == ReplayPolicy.MostUsed && r.Quarter == plan.Quarter);
            Assert.True(plain.Money <= plan.Money, plan.Quarter);
            Assert.True(plan.Completion > plain.Completion, $"{plan.Quarter}: {plan.Completion} and {plain.Completion}");
        });
    }

    private static async Task RunAsync(params string[] args)
    {
        using var output = new StringWriter();
        using var error = new StringWriter();
        Assert.Equal(0, await CommandHost.RunAsync(args, output, error, TimeProvider.System));
    }
}
