using System.Diagnostics;
using System.Globalization;
using PartsSignal.Analysis.CheckOrder;
using PartsSignal.Analysis.PartPrediction.Answers;
using PartsSignal.Analysis.PartPrediction.Calls;
using PartsSignal.Analysis.PartPrediction.Contest;
using PartsSignal.Analysis.PartPrediction.Learning;
using PartsSignal.Analysis.PartPrediction.ModelFiles;
using PartsSignal.Pipeline.Checks;

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
        Learned learned = PartLearner.Learn(_calls, new ContestOptions());
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
        Learned plain = PartLearner.Learn(_calls[..100], new ContestOptions());
        _model = plain.Model with { Contender = contender.Name, Predictor = contender.Train(_calls), Counts = (Analysis.PartPrediction.BackOff.BackOffModel)new BackOffContender().Train(_calls) };
        _facts = new LookupFacts([], [], [], [], [], CheckTableReader.Load(null), []);
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
    private static readonly string[] Types = ["washer", "dryer", "dishwasher", "refrigerator", "range", "microwave"];
    private static readonly string[] Kinds = ["no_fill", "no_drain", "no_heat", "noise", "leak", "no_start", "other"];
    private static readonly string[] Words = ["does not fill", "will not drain", "stays cold", "very loud", "water on floor", "dead", "playing up"];
    private static readonly string[] Needs = ["control_board", "door_seal", "drain_pump", "heater", "inlet_valve", "level_switch", "none", "thermistor", "timer"];

    public static ClosedCall[] Make(int count)
    {
        var random = new Random(20240229);
        return [.. Enumerable.Range(0, count).Select(i => One(random, i, count))];
    }

    private static ClosedCall One(Random random, int i, int count)
    {
        int family = (int)(60 * Math.Pow(random.NextDouble(), 2)), kind = random.Next(Kinds.Length);
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
            MadeOn = Call.BuiltOn(day, age, "date code"),
            ComplaintKind = Kinds[kind],
            ComplaintText = Words[kind],
            CustomerKind = random.Next(5) == 0 ? "contract" : "household",
            Month = day.Month,
        });
    }
}
