using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization;
using PartsSignal.Analysis.Prediction;
using PartsSignal.Analysis.Prediction.Contest;
using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.VanPlan;
using PartsSignal.Analysis.VanPlan.Replay;

namespace PartsSignal.SampleShop.Scoring;

/// <summary>
/// Scores a run over a fictional shop against its truth. The run record holds no answer per job, so the test answers and the
/// plans of past quarters are made again from the store of the run: the same data and settings give the same ones, and
/// the figures they share with the run record show that they did.
/// </summary>
internal static class RunScore
{
    private static readonly JsonSerializerOptions OptionsFormat = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.SnakeCaseLower) },
    };

    /// <summary>The keys of the run record that need the truth, in its sections <c>prediction</c> and <c>van</c>.</summary>
    /// <param name="output">Folder that the run wrote.</param>
    /// <param name="input">Folder with the shop's files and their truth, or null for the one the run read.</param>
    /// <exception cref="InvalidDataException">There is no run or no truth, or the run came to other figures; the message says what to do.</exception>
    public static JsonObject Compute(string output, string? input = null)
    {
        string path = Path.Combine(output, "run.json");
        JsonObject record = File.Exists(path) && JsonNode.Parse(File.ReadAllText(path)) is JsonObject run ? run
            : throw new InvalidDataException($"{output} holds no run.json. Do a run first: partssignal run --input data-sample --out {output}");
        string truth = Path.Combine(input ?? (string?)record["input"] ?? "", "truth");
        if (!File.Exists(Path.Combine(truth, "jobs.csv.gz")) || !File.Exists(Path.Combine(truth, "demand.csv.gz")))
        {
            throw new InvalidDataException($"{truth} holds no jobs.csv.gz and demand.csv.gz. Only a shop written by 'partssignal sample' has a truth to score against; name its folder with --input.");
        }

        // One worker, as in a run: floating sums depend on how rows are dealt to threads.
        using Database database = Database.Open(new DatabaseOptions { Threads = 1 });
        string store = Path.Combine(output, "store");
        StoreTables.Attach(database, (Directory.Exists(store) ? Directory.ResolveLinkTarget(store, returnFinalTarget: true)?.FullName : null) ?? store);
        return new JsonObject
        {
            ["prediction"] = record["prediction"] is JsonObject prediction ? Prediction(database, prediction, truth) : null,
            ["van"] = record["van"] is JsonObject van ? Van(database, van, truth) : null,
        };
    }

    private static JsonObject? Prediction(Database database, JsonObject section, string truth)
    {
        if ((int?)section["seed"] is not { } seed || PartLearner.Learn(TrainingTable.Read(database), new ContestOptions { Seed = seed }).Answers is not { } answers)
        {
            return null;
        }

        Check(section, "log_loss", answers.Judge().Shipped.LogLoss);
        return PredictionScore.Compute(answers, JobTruth.Read(Path.Combine(truth, "jobs.csv.gz"), answers.Shipped.Select(w => w.Forecast.JobId).ToHashSet()));
    }

    private static JsonObject? Van(Database database, JsonObject section, string truth)
    {
        if (section["options"].Deserialize<VanPlanOptions>(OptionsFormat) is not { } shop || (string?)section["as_of"] is not { } day)
        {
            return null;
        }

        // Of a shop with many vans, the run replays the first group only.
        DateOnly asOf = DateOnly.ParseExact(day, "yyyy-MM-dd", CultureInfo.InvariantCulture);
        VanGroup group = VanGroup.Create(database, asOf, shop)[0];
        VanPlanOptions options = group.Options(shop);
        ShopData data = ShopDataReader.Read(database, asOf, group)!;
        ReplayEvidence evidence = RollingReplay.Run(data, new ShopViews(data, options), options);
        ReplayRow[] plans = [.. evidence.Rows.Where(r => r.Policy == ReplayPolicy.Plan)];
        int jobs = plans.Sum(r => r.Jobs);
        Check(section, "completion_plan", jobs == 0 ? null : plans.Sum(r => r.Finished) / (double)jobs);
        return VanScore.Compute(Path.Combine(truth, "demand.csv.gz"), evidence, data, options);
    }

    private static void Check(JsonObject section, string key, double? again)
    {
        double? recorded = (double?)section[key];
        if (recorded is null != again is null || Math.Abs((recorded ?? 0) - (again ?? 0)) > 1e-6)
        {
            throw new InvalidDataException(string.Create(CultureInfo.InvariantCulture,
                $"{key} is {recorded:0.######} in run.json and {again:0.######} when computed again. Another version or another store made run.json: do the run again."));
        }
    }
}
