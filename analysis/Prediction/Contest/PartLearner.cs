using PartsSignal.Analysis.Prediction.LogOdds;
using PartsSignal.Analysis.Prediction.ModelFiles;

namespace PartsSignal.Analysis.Prediction.Contest;

/// <summary>What learning brought.</summary>
/// <param name="Model">The model that answers from now on.</param>
/// <param name="TimeSplit">Which days served what, or null if there is too little history to judge anything.</param>
/// <param name="Entries">The contest; empty where there was none.</param>
/// <param name="Answers">Test months, as answered; null where there were none.</param>
/// <param name="Note">Why there was no contest, or null if there was one.</param>
public sealed record LearningResult(ShippedModel Model, TimeSplit? TimeSplit, IReadOnlyList<ContestEntry> Entries, TestAnswers? Answers, string? Note);

/// <summary>Chooses a contender, judges it on later months, and trains it on everything known.</summary>
public static class PartLearner
{
    /// <summary>The contenders of every contest, simplest first.</summary>
    public static readonly IReadOnlyList<IContender> Contenders = [new ComplaintOnlyContender(), new ComplaintOnTypeContender(), new BackOffContender(), new LogOddsContender()];

    /// <summary>Learns from closed jobs, ordered by day of the call. No jobs give a model that knows no need.</summary>
    public static LearningResult Learn(IReadOnlyList<ClosedCall> calls, ContestOptions options, IReadOnlyList<IContender>? contenders = null) =>
        Contest(calls, options, contenders ?? Contenders);

    private static LearningResult Contest(IReadOnlyList<ClosedCall> calls, ContestOptions options, IReadOnlyList<IContender> contenders)
    {
        TimeSplit? timetable = TimeSplit.For(calls, options);
        IContender backOff = contenders.Single(c => c.Name == BackOffContender.ContenderName);
        int before = timetable is null ? 0 : calls.Count(c => c.ClosedOn < timetable.Calibration.From);
        if (timetable is null || before < options.LeastJobs)
        {
            string why = $"{calls.Count} closed jobs are too few for a contest; the back-off answers";
            return new LearningResult(Final(calls, backOff, null), null, [], null, why);
        }

        ChoiceResult choice = ContenderChoice.Make(calls, contenders, timetable, options.Seed);
        IContender[] walkers = [choice.Winner, new ComplaintOnlyContender(), new ComplaintOnTypeContender(), backOff];
        var walks = new WalkForwardResult[walkers.Length];
        Parallel.For(0, walkers.Length, i => walks[i] = WalkForward.Through(calls, walkers[i], timetable, i == 0 ? choice.Learned : null, readsTypes: i == 0));
        return new LearningResult(
            Final(calls, choice.Winner, walks[0]), timetable, choice.Entries, Answers(w => w.Test, walks) with
            {
                Slices = CallSlice.All.ToDictionary(s => s.Name, s => Answers(w => w.Slices[s.Name], walks), StringComparer.Ordinal),
            }, null);
    }

    private static TestAnswers Answers(Func<WalkForwardResult, IReadOnlyList<WalkedForecast>> part, WalkForwardResult[] walks) =>
        new(part(walks[0]), part(walks[1]), part(walks[2]), part(walks[3]));

    private static ShippedModel Final(IReadOnlyList<ClosedCall> calls, IContender winner, WalkForwardResult? walk)
    {
        IPredictor predictor = winner.Train(calls, walk?.Last);
        return new ShippedModel
        {
            Contender = winner.Name,
            LearnedTo = calls.Count == 0 ? null : calls.Max(c => c.ClosedOn),
            Jobs = calls.Count,
            Predictor = predictor,
            Types = TypeReader.Learn(calls, walk?.LastTypes),
            Counts = predictor is BackOffModel { Levels.Count: > 3 } same ? same : BackOffTrainer.Train(calls),
            Temperature = walk?.Temperature ?? 1,
            Carry80 = walk?.Carry80 ?? CarryLimits.Fit([], 0.80),
            Carry95 = walk?.Carry95 ?? CarryLimits.Fit([], 0.95),
        };
    }
}
