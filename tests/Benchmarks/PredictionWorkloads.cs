using System.Diagnostics;
using System.Globalization;
using PartsSignal.Analysis.CheckOrder;
using PartsSignal.Analysis.Prediction;
using PartsSignal.Analysis.Prediction.Answers;
using PartsSignal.Analysis.Prediction.Contest;
using PartsSignal.Analysis.Prediction.ModelFiles;
using PartsSignal.Pipeline.Config;

namespace PartsSignal.Benchmarks;

/// <summary>Contest, walk and final training of the part predictor.</summary>
public sealed class PredictionTraining : IWorkload
{
    private ClosedCall[] _calls = [];

    /// <inheritdoc/>
    public string Name => "prediction-training";

    /// <inheritdoc/>
    public int DefaultSize => 100_000;

    /// <inheritdoc/>
    public string Unit => "jobs";

    /// <inheritdoc/>
    public void Prepare(int size) => _calls = InventedCalls.Make(size);

    /// <inheritdoc/>
    public string Run()
    {
        LearningResult learned = PartLearner.Learn(_calls, new ContestOptions());
        return string.Create(CultureInfo.InvariantCulture, $"{learned.Model.Contender}, {learned.Model.Needs.Count} needs");
    }
}

/// <summary>Whole answers from a trained predictor, in one process.</summary>
public sealed class PredictionLookups : IWorkload
{
    private ClosedCall[] _calls = [];
    private ShippedModel? _model;
    private LookupFacts? _facts;

    /// <inheritdoc/>
    public string Name => "prediction-lookups";

    /// <inheritdoc/>
    public int DefaultSize => 10_000;

    /// <inheritdoc/>
    public string Unit => "lookups";

    /// <inheritdoc/>
    public void Prepare(int size)
    {
        _calls = InventedCalls.Make(Math.Max(size, 5_000));
        IContender contender = new LogOddsContender();
        LearningResult plain = PartLearner.Learn(_calls[..100], new ContestOptions());
        _model = plain.Model with { Contender = contender.Name, Predictor = contender.Train(_calls), Counts = (Analysis.Prediction.BackOffModel)new BackOffContender().Train(_calls) };
        _facts = InventedCalls.Facts(CheckTableReader.Load(null));
        _calls = _calls[..size];
    }

    /// <inheritdoc/>
    public string Run()
    {
        var options = new AnswerOptions();
        var times = new double[_calls.Length];
        for (int i = 0; i < times.Length; i++)
        {
            long started = Stopwatch.GetTimestamp();
            AnswerBuilder.Build(_calls[i].Call, _model!, _facts!, options);
            times[i] = Stopwatch.GetElapsedTime(started).TotalMilliseconds;
        }

        Array.Sort(times);
        return string.Create(CultureInfo.InvariantCulture, $"median {times[times.Length / 2]:0.000} ms, 99 % {times[times.Length * 99 / 100]:0.000} ms");
    }
}

/// <summary>Calls with families, kinds, ages and needs of a plausible mix, from a fixed seed.</summary>
internal static class InventedCalls
{
    private const int Families = 60;
    private static readonly string[] Types = ["washer", "dryer", "dishwasher", "refrigerator", "range", "microwave"];
    private static readonly string[] Kinds = ["no_fill", "no_drain", "no_heat", "noise", "leak", "no_start", "other"];
    private static readonly string[] Words = ["does not fill", "will not drain", "stays cold", "very loud", "water on floor", "dead", "playing up"];
    private static readonly string[] Needs = ["control_board", "door_seal", "drain_pump", "heater", "inlet_valve", "level_switch", "none", "thermistor", "timer"];

    public static ClosedCall[] Make(int count)
    {
        var random = new Random(20240229);
        return [.. Enumerable.Range(0, count).Select(i => One(random, i, count))];
    }

    /// <summary>Two parts per family and need, one of them on a van, a companion per need, risks at every age.</summary>
    public static LookupFacts Facts(CheckTable checks) => new(
        [.. from f in Enumerable.Range(0, Families) from need in Needs from n in (int[])[1, 2] select ($"F{f:D2}", new FamilyPart { Component = need, PartNumber = $"{f:D2}-{need}-{n}", TimesSeen = 10 / n, Price = 20 * n })],
        [.. from f in Enumerable.Range(0, Families) from need in Needs select ($"F{f:D2}-1", $"{f:D2}-{need}-2", 3L)],
        [.. from type in Types from need in Needs select new Companion(type, need, "clamp_set", 200, 60, 0.3, 2)],
        [.. from f in Enumerable.Range(0, Families) from need in Needs select new VanPart($"{f:D2}-{need}-1", "1", 2, new DateOnly(2025, 7, 1))],
        [.. from f in Enumerable.Range(0, Families) from m in Enumerable.Range(0, 4) select new KnownModel($"F{f:D2}-{m}", $"F{f:D2}", Types[f % Types.Length], $"brand {f % 7}")],
        checks,
        [.. from type in Types from need in Needs from age in Enumerable.Range(0, 13) select new YearRisk("units_seen", type, "all", need, age, 0.02 * age, 40)]);

    private static ClosedCall One(Random random, int i, int count)
    {
        int family = (int)(Families * Math.Pow(random.NextDouble(), 2)), kind = random.Next(Kinds.Length);
        DateOnly day = new DateOnly(2019, 1, 1).AddDays((int)(2_400L * i / count));
        int need = random.NextDouble() < 0.5 ? (family + kind) % Needs.Length : random.Next(Needs.Length);
        double age = 12 * random.NextDouble();
        return new ClosedCall($"J{i:D7}", day, day.AddDays(random.Next(8)), null, Needs[need], new Call
        {
            ApplianceType = Types[family % Types.Length],
            Brand = $"brand {family % 7}",
            ModelFamily = $"F{family:D2}",
            ModelNumber = $"F{family:D2}-{random.Next(4)}",
            AgeYears = age,
            AgeBasis = "date code",
            ComplaintKind = Kinds[kind],
            ComplaintText = Words[kind],
            CustomerKind = random.Next(5) == 0 ? "contract" : "household",
        }.On(day));
    }
}
