using PartsSignal.Analysis.PartPrediction.Calibration;
using PartsSignal.Analysis.PartPrediction.Calls;
using PartsSignal.Analysis.PartPrediction.Judging;
using PartsSignal.Analysis.Statistics;

namespace PartsSignal.Analysis.PartPrediction.Contest;

/// <summary>What the contest brought.</summary>
/// <param name="Entries">All contenders, one of which ships.</param>
/// <param name="Shipped">What the one that ships learned before the calibration months.</param>
public sealed record ChoiceResult(IReadOnlyList<Entry> Entries, IPredictor Shipped);

/// <summary>Chooses a contender on the validation months.</summary>
public static class Choice
{
    /// <summary>
    /// Each contender learns from the jobs known before the calibration months, finds its temperature there, and is
    /// judged by log loss on the validation months. The lowest wins; a simpler contender whose paired interval to it
    /// reaches zero ships instead.
    /// </summary>
    public static ChoiceResult Make(IReadOnlyList<ClosedCall> calls, IReadOnlyList<IContender> contenders, Timetable timetable, int seed)
    {
        var judged = new Span(timetable.Calibration.From, timetable.Validation.To);
        IReadOnlyList<ClosedCall> learn = Timetable.Known(calls, judged);
        IReadOnlyList<ClosedCall> calibrate = Timetable.Within(calls, timetable.Calibration), judge = Timetable.Within(calls, timetable.Validation);
        var predictors = new IPredictor[contenders.Count];
        var heats = new double[contenders.Count];
        var forecasts = new IReadOnlyList<Forecast>[contenders.Count];
        Parallel.For(0, contenders.Count, i =>
        {
            IPredictor predictor = predictors[i] = contenders[i].Train(learn);
            heats[i] = Temperature.Fit(Forecasting.Of(predictor, calibrate));
            forecasts[i] = Heated.At(Forecasting.Of(predictor, judge), heats[i]);
        });
        Scores[] scores = [.. forecasts.Select(Scores.Of)];
        int best = Enumerable.Range(0, scores.Length).MinBy(i => scores[i].LogLoss ?? double.PositiveInfinity);
        Estimate[] behind = [.. forecasts.Select(f => WeekBootstrap.Mean(f, [.. f.Zip(forecasts[best], (a, b) => a.LogLoss - b.LogLoss)], seed))];
        int ships = Enumerable.Range(0, scores.Length)
            .Where(i => i == best || behind[i].Lower <= 0)
            .MinBy(i => contenders[i].Complexity);
        return new ChoiceResult([.. contenders.Select((c, i) => new Entry(c.Name, c.What, heats[i], scores[i], behind[i], i == ships))], predictors[ships]);
    }
}
