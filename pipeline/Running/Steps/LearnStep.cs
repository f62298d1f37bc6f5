using PartsSignal.Analysis.PartPrediction.Calls;
using PartsSignal.Analysis.PartPrediction.Contest;
using PartsSignal.Analysis.PartPrediction.Learning;
using PartsSignal.Analysis.Sql;
using PartsSignal.Pipeline.Learning;

namespace PartsSignal.Pipeline.Running.Steps;

/// <summary>
/// Chooses, judges and trains the part predictor; writes its model, its card and its result tables. Leaves a
/// <see cref="Learned"/> in <see cref="RunContext.Shared"/>: its model answers the open jobs of <see cref="BookedCalls"/>.
/// </summary>
public sealed class LearnStep : IRunStep
{
    private const string Checks = "Prediction";

    /// <inheritdoc/>
    public string Name => "learn";

    /// <inheritdoc/>
    public Task<long> RunAsync(RunContext context, CancellationToken cancellation)
    {
        context.BuildResults(ResultSteps.Prediction);
        IReadOnlyList<ClosedCall> calls = TrainingTable.Read(context.Database);
        var options = new ContestOptions { Seed = context.Settings.Seed };
        Learned learned = PartLearner.Learn(calls, options);
        cancellation.ThrowIfCancellationRequested();
        ModelStore.Write(context.Output, learned.Model);
        IReadOnlyList<ScoreRow> scores = ResultTables.Scores(learned, options.Seed);
        context.AddResult("prediction_contest", ResultTables.Contest(learned), Checks);
        context.AddResult("prediction_scores", scores, Checks);
        context.AddResult("prediction_reliability", ResultTables.ReliabilityTable(learned), Checks);
        context.AddResult("prediction_risk_coverage", ResultTables.Risk(learned), Checks);
        context.AddResult("prediction_by_month", ResultTables.Months(learned), Checks);
        HashSet<string> tested = [.. learned.Answers?.Shipped.Select(w => w.Forecast.JobId) ?? []];
        IReadOnlyDictionary<string, JobTruth> truths = TruthFile.Read(context.Input, tested);
        context.Record["prediction"] = PredictionRecord.Of(learned, truths);
        ModelCard.Write(context.Output, learned, calls, scores);
        context.Shared[typeof(Learned)] = learned;
        return Task.FromResult((long)calls.Count);
    }
}
