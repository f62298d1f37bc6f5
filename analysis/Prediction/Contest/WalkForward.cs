using PartsSignal.Analysis.Prediction.LogOdds;

namespace PartsSignal.Analysis.Prediction.Contest;

/// <summary>A forecast of the walk, and whether the sets of its day covered it.</summary>
/// <param name="Forecast">The forecast, at the temperature known then.</param>
/// <param name="Covered80">The 80 % set held the truth.</param>
/// <param name="Covered95">The 95 % set held the truth.</param>
/// <param name="Size80">Needs in the 80 % set.</param>
/// <param name="Size95">Needs in the 95 % set.</param>
public sealed record WalkedForecast(Forecast Forecast, bool Covered80, bool Covered95, int Size80, int Size95);

/// <summary>What a walk through the months leaves behind.</summary>
/// <param name="Test">Forecasts of the test months.</param>
/// <param name="Temperature">Temperature for the days after the last.</param>
/// <param name="Carry80">Thresholds of the 80 % sets for the days after the last.</param>
/// <param name="Carry95">Thresholds of the 95 % sets for the days after the last.</param>
/// <param name="Last">The predictor of the last fold, to start the final training from.</param>
/// <param name="Slices">Forecasts of test calls with something held back, by the slice's name.</param>
internal sealed record WalkForwardResult(
    IReadOnlyList<WalkedForecast> Test, double Temperature, CarryLimits Carry80, CarryLimits Carry95, IPredictor? Last,
    IReadOnlyDictionary<string, List<WalkedForecast>> Slices)
{
    /// <summary>What the type reader of the last fold learned, or null if there is none.</summary>
    public TypeReader? LastTypes { get; init; }
}

/// <summary>
/// Rolling origin: at each cut-off a contender learns from what was known, answers the months up to the next cut-off,
/// with temperature and set thresholds from its own answers of the two folds before.
/// </summary>
internal static class WalkForward
{
    private const int CalibrationFolds = 2;

    /// <summary>Walks one contender through the folds.</summary>
    /// <param name="calls">Closed jobs by day of the call.</param>
    /// <param name="contender">The contender.</param>
    /// <param name="timetable">The folds.</param>
    /// <param name="earlier">What it learned before the folds, to start from, or null to start afresh.</param>
    /// <param name="readsTypes">True: where a call tells no type, the answer is summed over types.</param>
    public static WalkForwardResult Through(
        IReadOnlyList<ClosedCall> calls, IContender contender, TimeSplit timetable, IPredictor? earlier = null, bool readsTypes = false)
    {
        var slices = CallSlice.All.ToDictionary(s => s.Name, _ => new List<WalkedForecast>(), StringComparer.Ordinal);
        TypeReader? types = null;
        var raw = new List<IReadOnlyList<Forecast>>();
        var test = new List<WalkedForecast>();
        IPredictor? predictor = earlier;
        foreach (DateRange fold in timetable.Folds)
        {
            IReadOnlyList<ClosedCall> known = TimeSplit.Known(calls, fold), within = TimeSplit.Within(calls, fold);
            predictor = contender.Train(known, predictor);
            types = readsTypes ? TypeReader.Learn(known, types) : null;
            IPredictor answers = TypeReader.Over(predictor, types);
            IReadOnlyList<Forecast> forecasts = Forecasting.Run(answers, within);
            if (raw.Count >= CalibrationFolds)
            {
                (double heat, CarryLimits carry80, CarryLimits carry95) = Calibrate(raw);
                test.AddRange(Heated.At(forecasts, heat).Select(f => Set(f, carry80, carry95)));
                foreach (CallSlice slice in CallSlice.All)
                {
                    slices[slice.Name].AddRange(Heated.At(Forecasting.Run(answers, slice.From(within)), heat).Select(f => Set(f, carry80, carry95)));
                }
            }

            raw.Add(forecasts);
        }

        (double last80Heat, CarryLimits last80, CarryLimits last95) = Calibrate(raw);
        return new WalkForwardResult(test, last80Heat, last80, last95, predictor, slices) { LastTypes = types };
    }

    private static (double Heat, CarryLimits Carry80, CarryLimits Carry95) Calibrate(List<IReadOnlyList<Forecast>> raw)
    {
        Forecast[] recent = [.. raw.TakeLast(CalibrationFolds).SelectMany(f => f)];
        double heat = TemperatureScaling.Fit(recent);
        IReadOnlyList<Forecast> heated = Heated.At(recent, heat);
        return (heat, CarryLimits.Fit(heated, 0.80), CarryLimits.Fit(heated, 0.95));
    }

    private static WalkedForecast Set(Forecast forecast, CarryLimits carry80, CarryLimits carry95) => new(
        forecast,
        carry80.Covers(forecast),
        carry95.Covers(forecast),
        carry80.Members(forecast).Count,
        carry95.Members(forecast).Count);
}

/// <summary>How contenders are judged.</summary>
public sealed record ContestOptions
{
    /// <summary>Months whose figures are published; never used for a choice. Default 12.</summary>
    public int TestMonths { get; init; } = 12;

    /// <summary>Months the choice is made on. Default 6.</summary>
    public int ValidationMonths { get; init; } = 6;

    /// <summary>Months between learning and validation on which temperatures are found. Default 3.</summary>
    public int CalibrationMonths { get; init; } = 3;

    /// <summary>Months between two trainings while the shipped contender walks through the test months. Default 3.</summary>
    public int FoldMonths { get; init; } = 3;

    /// <summary>Fewest closed jobs before the first validation month for a contest; below, the back-off ships unjudged. Default 150.</summary>
    public int LeastJobs { get; init; } = 150;

    /// <summary>Seed of the bootstrap.</summary>
    public int Seed { get; init; } = 20240229;
}
