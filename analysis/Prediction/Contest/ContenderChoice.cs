using System.Collections.Concurrent;
using PartsSignal.Analysis.Statistics;

namespace PartsSignal.Analysis.Prediction.Contest;

/// <summary>What the contest brought.</summary>
/// <param name="Entries">All contenders, one of which ships.</param>
/// <param name="Winner">The one that ships.</param>
/// <param name="Learned">What it learned before the calibration months.</param>
internal sealed record ChoiceResult(IReadOnlyList<ContestEntry> Entries, IContender Winner, IPredictor Learned);

/// <summary>Chooses a contender on the validation months.</summary>
internal static class ContenderChoice
{
    // Fewest calls of a type or complaint for a winner among them.
    private const int LeastCalls = 50;

    /// <summary>
    /// Each contender learns from the jobs known before the calibration months, finds its temperature there, and is
    /// judged by log loss on the validation months; a stack of them, weighted on the calibration months, is judged beside
    /// them. The lowest wins; a simpler contender whose paired interval to it reaches zero ships instead. Shares by complaint
    /// alone ship only if they are the lowest: in a small shop the interval is too wide to show what the type of the appliance
    /// adds. Where nothing could be judged, the back-off ships.
    /// </summary>
    public static ChoiceResult Make(IReadOnlyList<ClosedCall> calls, IReadOnlyList<IContender> contenders, TimeSplit timetable, int seed)
    {
        var judged = new DateRange(timetable.Calibration.From, timetable.Validation.To);
        IReadOnlyList<ClosedCall> learn = TimeSplit.Known(calls, judged);
        IReadOnlyList<ClosedCall> calibrate = TimeSplit.Within(calls, timetable.Calibration), judge = TimeSplit.Within(calls, timetable.Validation);
        var tried = new Tried[contenders.Count];
        // The dearest first, so that the cheap ones fill the gaps at the end.
        int[] order = [.. Enumerable.Range(0, tried.Length).OrderByDescending(i => contenders[i].Complexity)];
        Parallel.ForEach(Partitioner.Create(order, EnumerablePartitionerOptions.NoBuffering), i =>
            tried[i] = Try(contenders[i], contenders[i].Train(learn), calibrate, judge));
        return Decide([.. tried, .. Stack([.. tried.Where(t => t.Contender.Complexity >= BackOffContender.Simplicity)], calibrate, judge)], seed);
    }

    private static Tried Try(IContender contender, IPredictor predictor, IReadOnlyList<ClosedCall> calibrate, IReadOnlyList<ClosedCall> judge)
    {
        IReadOnlyList<Forecast> before = Forecasting.Run(predictor, calibrate);
        double heat = TemperatureScaling.Fit(before);
        return new Tried(contender, predictor, heat, before, Heated.At(Forecasting.Run(predictor, judge), heat));
    }

    private static IEnumerable<Tried> Stack(Tried[] members, IReadOnlyList<ClosedCall> calibrate, IReadOnlyList<ClosedCall> judge)
    {
        if (members.Length < 2 || calibrate.Count == 0)
        {
            yield break;
        }

        double[] weights = StackWeights.Fit([.. members.Select(m => m.Calibration)]);
        int[] kept = [.. Enumerable.Range(0, members.Length).Where(m => weights[m] > 0)];
        if (kept.Length < 2)
        {
            yield break;
        }

        double[] own = [.. kept.Select(m => weights[m])];
        yield return Try(
            new StackedContender([.. kept.Select(m => members[m].Contender)], own),
            new StackedPredictor([.. kept.Select(m => members[m].Predictor)], own), calibrate, judge);
    }

    private static ChoiceResult Decide(Tried[] tried, int seed)
    {
        Scores[] scores = [.. tried.Select(t => Scores.From(t.Judged))];
        int best = Enumerable.Range(0, scores.Length).MinBy(i => scores[i].LogLoss ?? double.PositiveInfinity);
        Estimate[] behind = [.. tried.Select(t => WeekIntervals.Mean(t.Judged, [.. t.Judged.Zip(tried[best].Judged, (a, b) => a.LogLoss - b.LogLoss)], seed))];
        int ships = Enumerable.Range(0, scores.Length)
            .Where(i => tried[best].Judged.Count == 0 ? tried[i].Contender is BackOffContender : i == best || (behind[i].Lower <= 0 && tried[i].Contender is not ComplaintOnlyContender))
            .MinBy(i => tried[i].Contender.Complexity);
        ILookup<int, string> wins = Wins(tried);
        return new ChoiceResult(
            [.. tried.Select((t, i) => new ContestEntry(t.Contender.Name, t.Contender.What, t.Temperature, scores[i], behind[i], i == ships) { Wins = [.. wins[i]] })],
            tried[ships].Contender, tried[ships].Predictor);
    }

    private static ILookup<int, string> Wins(Tried[] tried)
    {
        IReadOnlyList<Forecast> calls = tried[0].Judged;
        IEnumerable<(string Name, int[] Calls)> By(string what, Func<Forecast, string> of) => Enumerable.Range(0, calls.Count)
            .GroupBy(c => of(calls[c]), StringComparer.Ordinal).OrderBy(g => g.Key, StringComparer.Ordinal).Select(g => (what + g.Key, g.ToArray()));
        (string Name, int[] Calls)[] groups = [.. By("all", _ => ""), .. By("type:", f => f.ApplianceType), .. By("complaint:", f => f.ComplaintKind)];
        int[] simplest = [.. Enumerable.Range(0, tried.Length).OrderBy(i => tried[i].Contender.Complexity)];
        return groups.Where(g => g.Calls.Length >= LeastCalls)
            .ToLookup(g => simplest.MinBy(i => g.Calls.Sum(c => tried[i].Judged[c].LogLoss)), g => g.Name);
    }

    private sealed record Tried(
        IContender Contender, IPredictor Predictor, double Temperature, IReadOnlyList<Forecast> Calibration, IReadOnlyList<Forecast> Judged);
}
