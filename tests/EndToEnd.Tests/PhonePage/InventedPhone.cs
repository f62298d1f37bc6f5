using PartsSignal.Analysis.Prediction;
using PartsSignal.Analysis.Prediction.LogOdds;
using PartsSignal.Analysis.Prediction.ModelFiles;
using PartsSignal.Pipeline.Reporting;
using PartsSignal.Reports.Phone;

namespace PartsSignal.EndToEnd.Tests.PhonePage;

/// <summary>A phone page over an invented predictor with weights of every kind, and text that tries to be markup.</summary>
internal static class InventedPhone
{
    public const string Evil = "</script><script>window.ran=1</script>";
    private static readonly string[] Types = ["washer", "dryer"];
    private static readonly string[] Kinds = ["no_fill", "leak", "noise"];
    private static readonly string[] Stems = ["fill", "water", "noise"];

    public static ShippedModel Model { get; } = Make();

    public static IReadOnlyList<Call> Questions(int count)
    {
        var random = new Random(7);
        return [.. Enumerable.Range(0, count).Select(_ => Question(random))];
    }

    public static LookupData Data(DateOnly asOf) => new()
    {
        Shop = "Millrace " + Evil,
        Currency = "EUR",
        AsOf = asOf,
        Needs = Model.Needs,
        Weights = PhoneWeights.From(Model),
        Models = [new("K41-220/B", "K41", "washer", "Norvik"), new("O0-1L7", "OO1", "dryer", Evil)],
        Kinds = [new("no_fill", ["washer"], "no fill not water"), new("leak", [], "leak drip"), new("noise", [], "noise loud")],
        Parts = new Dictionary<string, IReadOnlyList<LookupPart>>
        {
            ["K41/inlet_valve"] = [new("PX-30000", "valve", 1, 9m, true, 20, [], []), new("PX-30001", "valve", 1, 9m, true, 19, [], []), new("PX-20011", "valve " + Evil, 1, 12.5m, true, 14, ["PX-10007"], [new("2", 3)])],
        },
        OnModel = new Dictionary<string, IReadOnlyDictionary<string, long>> { ["K41-220/B"] = new Dictionary<string, long> { ["PX-20011"] = 9 } },
        Checks =
        [
            new([], [], "none", "Is the tap open?", 1, "", "water runs", "dry", null, 1, 1, "", true),
            new(["washer"], [], "inlet_valve", "Coil resistance", 4, "meter", "about 3.5 kilohm", "open circuit", "rear panel", 1, 1, "Disconnect power first.", false),
        ],
        Openings = new Dictionary<string, IReadOnlyDictionary<string, LookupOpening>>
        {
            ["washer"] = new Dictionary<string, LookupOpening> { ["rear panel"] = new(5, "Sharp edges.") },
        },
        Phrases = [new("no_fill", ["washer"], ["no", "water"]), new("no_fill", [], ["wont", "fill"]), new("leak", [], ["leak*"]), new("noise", [], ["nois*"])],
    };

    private static Call Question(Random random)
    {
        string type = Types[random.Next(2)];
        string? family = random.Next(4) == 0 ? null : type == "washer" ? "K41" : "OO1";
        return new Call
        {
            ApplianceType = random.Next(12) == 0 ? Call.Unknown : type,
            Brand = random.Next(3) == 0 ? null : "Norvik",
            ModelFamily = family,
            ModelNumber = family is null || random.Next(2) == 0 ? null : "K41-220/B",
            ComplaintKind = Kinds[random.Next(3)],
            ComplaintText = random.Next(4) switch { 0 => "Wont FILL, no water!", 1 => "loud noises", 2 => "wont fil, niose", _ => "leak" },
            AgeYears = random.Next(4) == 0 ? null : Math.Round(random.NextDouble() * 16, 1),
            CustomerKind = random.Next(4) == 0 ? "contract" : "household",
            ErrorCode = random.Next(4) == 0 ? "E20" : null,
            MadeOn = random.Next(3) == 0 ? new DateOnly(2023, 1 + random.Next(12), 15) : null,
            Earlier = random.Next(3) == 0 ? [new EarlierVisit(1 + random.Next(400), random.Next(3) == 0 ? null : "drain_pump", Kinds[random.Next(3)]), new EarlierVisit(900, "inlet_valve", "leak")] : [],
            Month = 1 + random.Next(12),
        };
    }

    private static ShippedModel Make()
    {
        string[] needs = ["drain_pump", "igniter", "inlet_valve", "none"];
        var space = new FeatureSpace();
        var words = new LearnedComplaintReader(new WordList(Stems), [], [], new Dictionary<string, int[]>());
        foreach (Feature feature in Questions(400).SelectMany(q => CallFeatures.From(q, words)))
        {
            space.Add(feature.Key, feature.Group);
            if (feature.OnlyNeed is not null)
            {
                space.Add(LogOddsShape.Shared(feature.Key), feature.Group);
            }
        }

        var random = new Random(11);
        double[] weights = [.. Enumerable.Range(0, space.Count * needs.Length).Select(_ => (random.NextDouble() - 0.5) * 2)];
        weights[(space.Find("family:K41/no_fill") * needs.Length) + 2] = 4;
        var shape = new LogOddsShape(needs, space, words, new Dictionary<string, int[]> { ["washer"] = [0, 2, 3], ["dryer"] = [1, 3] });
        return new ShippedModel
        {
            Contender = "log_odds",
            LearnedTo = new DateOnly(2024, 5, 31),
            Jobs = 400,
            Predictor = new LogOddsModel(shape, weights, [0.2, 0.1, 0.3, 0.4], []),
            Counts = new BackOffModel(needs, []),
            Temperature = 1.13,
            Carry80 = CarryLimits.Fit([], 0.8),
            Carry95 = CarryLimits.Fit([], 0.95),
        };
    }
}
