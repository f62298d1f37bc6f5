using System.Text.Json.Nodes;

namespace PartsSignal.EndToEnd.Tests;

/// <summary>A generated shop of 1,500 jobs, run once for all tests that look at what a run leaves behind.</summary>
public sealed class RunSmallShopFixture : IAsyncLifetime
{
    internal const string Collection = "small shop";

    private readonly ScratchFolder _folder = new();

    public string Input => _folder.Sub("shop");

    public string Out => _folder.Sub("out");

    public JsonObject Record { get; private set; } = [];

    internal Partssignal Run { get; private set; } = new(-1, "", "");

    public async ValueTask InitializeAsync()
    {
        await Partssignal.RunAsync("sample", "--jobs", "1500", "--seed", "11", "--output", Input);
        Run = await Partssignal.RunAsync("run", "--input", Input, "--out", Out);
        string record = Path.Combine(Out, "run.json");
        Record = File.Exists(record) ? JsonNode.Parse(await File.ReadAllTextAsync(record))!.AsObject() : [];
    }

    public ValueTask DisposeAsync()
    {
        _folder.Dispose();
        return ValueTask.CompletedTask;
    }
}

[CollectionDefinition(RunSmallShopFixture.Collection)]
public sealed class SmallShopTests : ICollectionFixture<RunSmallShopFixture>;
