using PartsSignal.Analysis.Prediction;
using PartsSignal.Analysis.Prediction.Contest;
using PartsSignal.Analysis.Sql;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Running;

namespace PartsSignal.Pipeline.Learning;

/// <summary>
/// Chooses, judges and trains the part predictor; writes its model, its card and its result tables. Leaves a
/// <see cref="LearningResult"/> in <see cref="RunState"/>: its model answers the open jobs of <see cref="BookedCalls"/>.
/// </summary>
internal sealed class LearnStep : IBackgroundStep
{
    private Task<Learning>? _begun;

    /// <inheritdoc/>
    public string Name => "learn";

    /// <inheritdoc/>
    public long Begin(RunContext context)
    {
        IReadOnlyList<ClosedCall> calls = TrainingTable.Read(context.Database);
        int seed = context.Settings.Seed;
        _begun = BackgroundTask.Start(() =>
        {
            LearningResult learned = PartLearner.Learn(calls, new ContestOptions { Seed = seed });
            return new Learning(calls, learned, PredictionTables.Scores(learned, seed), PredictionTables.SliceTable(learned, seed));
        });
        return calls.Count;
    }

    /// <inheritdoc/>
    public async Task<long> RunAsync(RunContext context, CancellationToken cancellation)
    {
        if (_begun is null)
        {
            Begin(context);
        }

        context.BuildResults(ResultModels.Prediction);
        (IReadOnlyList<ClosedCall> calls, LearningResult learned, IReadOnlyList<ScoreRow> scores, IReadOnlyList<SliceRow> slices) = await _begun!.WaitAsync(cancellation).ConfigureAwait(false);
        ModelStore.Write(context.Output, learned.Model);
        context.AddResult("prediction_contest", PredictionTables.Contest(learned));
        context.AddResult("prediction_scores", scores);
        context.AddResult("prediction_reliability", PredictionTables.ReliabilityTable(learned));
        context.AddResult("prediction_risk_coverage", PredictionTables.Risk(learned));
        context.AddResult("prediction_by_month", PredictionTables.Months(learned));
        context.AddResult("prediction_slices", slices);
        context.Record["prediction"] = PredictionRecord.Create(learned, context.Settings.Seed);
        ModelCard.Write(context.Output, learned, calls, scores, slices);
        context.State.Learned = learned;
        return calls.Count;
    }

    private sealed record Learning(IReadOnlyList<ClosedCall> Calls, LearningResult Learned, IReadOnlyList<ScoreRow> Scores, IReadOnlyList<SliceRow> Slices);
}
