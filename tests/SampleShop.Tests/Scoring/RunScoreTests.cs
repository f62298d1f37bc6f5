using System.Globalization;
using System.Text.Json.Nodes;
using PartsSignal.Pipeline.Commands;
using PartsSignal.SampleShop.Scoring;

namespace PartsSignal.SampleShop.Tests.Scoring;

public sealed class RunScoreTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("run-score-").FullName;

    private string Out => Path.Combine(_folder, "out");

    [Fact]
    public void Compute_NoRun_SaysToDoOne() => Fails("Do a run first");

    [Fact]
    public void Compute_ShopWithoutTruth_SaysWhichShopsHaveOne()
    {
        Record($$"""{ "input": "{{_folder.Replace('\\', '/')}}" }""");
        Fails("partssignal sample");
    }

    [Fact]
    public void Compute_RecordOfAnotherStore_IsRefused()
    {
        Record("""{ "van": { "completion_plan": 0.6, "as_of": "2026-10-31", "options": { "vans": [] } } }""");
        Fails("do the run again", RepositoryFolder.SampleShop);
    }

    [Fact]
    public void Compute_RecordOfARunWithoutFigures_LeavesThemNull()
    {
        Record("""{ "prediction": { "log_loss": null }, "van": { "jobs_replayed": 0 } }""");
        Assert.Equal("""{"prediction":null,"van":null}""", RunScore.Compute(Out, RepositoryFolder.SampleShop).ToJsonString());
    }

    [SlowFact]
    public async Task Compute_CommittedSample_GivesTheFiguresOfItsRun()
    {
        await ProgramAsync("run", "--input", RepositoryFolder.SampleShop, "--out", Out);
        // Vector widths differ between processors, so the last digits may.
        Same(JsonNode.Parse(
            """
            {"prediction":{"log_loss_best_possible":1.137901,"gap_closed":0.88543,"gap_closed_from_complaint_on_type":0.710721,"against_true_cause":{"jobs":3456,"log_loss":1.164183,"log_loss_complaint_only":1.720498,"log_loss_best_possible":1.093901,"gap_closed":0.887835},"no_fill":{"log_loss_best_possible":1.117734,"gap_closed":0.758561,"gap_closed_from_complaint_on_type":0.633512,"against_true_cause":{"jobs":348,"log_loss":1.183698,"log_loss_complaint_only":1.455775,"log_loss_best_possible":1.101226,"gap_closed":0.76739}}},"van":{"true_demand_attained":0.955659,"true_demand_attained_most_used":0.659838}}
            """)!, RunScore.Compute(Out));
    }

    // No setting was ever chosen on this seed.
    [SlowFact]
    public async Task Compute_FreshSeed_PlanComesNearThePlanThatKnows()
    {
        string shop = Path.Combine(_folder, "shop");
        await ProgramAsync("sample", "--jobs", "20000", "--seed", "1303", "--output", shop);
        await ProgramAsync("run", "--input", shop, "--out", Out);
        JsonNode van = RunScore.Compute(Out)["van"]!;
        Assert.InRange((double)van["true_demand_attained"]!, 0.95, 1.003);
        Assert.True((double)van["true_demand_attained"]! > (double)van["true_demand_attained_most_used"]!);
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private static void Same(JsonNode expected, JsonNode? actual)
    {
        if (expected is JsonObject keys)
        {
            Assert.Equal(keys.Select(k => k.Key), Assert.IsType<JsonObject>(actual).Select(k => k.Key));
            Assert.All(keys, k => Same(k.Value!, actual[k.Key]));
        }
        else
        {
            Assert.Equal(Number(expected), Number(actual!), 0.0005);
        }
    }

    private static double Number(JsonNode node) => double.Parse(node.ToJsonString(), CultureInfo.InvariantCulture);

    private void Record(string json)
    {
        Directory.CreateDirectory(Out);
        File.WriteAllText(Path.Combine(Out, "run.json"), json);
    }

    private void Fails(string expected, string? input = null) =>
        Assert.Contains(expected, Assert.Throws<InvalidDataException>(() => RunScore.Compute(Out, input)).Message, StringComparison.Ordinal);

    private static async Task ProgramAsync(params string[] args)
    {
        using var output = new StringWriter();
        using var error = new StringWriter();
        Assert.Equal(0, await CommandHost.RunAsync(args, output, error, TimeProvider.System));
    }
}
