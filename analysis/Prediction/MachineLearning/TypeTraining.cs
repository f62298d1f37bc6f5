using Microsoft.ML;

namespace PartsSignal.Analysis.Prediction.MachineLearning;

/// <summary>Trains one pipeline per type of appliance: a type has a third of all needs, so it is learned faster and better alone.</summary>
internal static class TypeTraining
{
    /// <summary>Fewest jobs of a type for a learner of its own.</summary>
    private const int LeastJobs = 200;

    /// <summary>Trains on all jobs.</summary>
    /// <param name="calls">Closed jobs.</param>
    /// <param name="seed">Seed of the library.</param>
    /// <param name="readsBackOff">True: each job's row carries the odds of a back-off that learned from the other jobs alone.</param>
    /// <param name="pipeline">The pipeline, trainer included.</param>
    public static LearnedPredictor Train(
        IReadOnlyList<ClosedCall> calls, int seed, bool readsBackOff, Func<MLContext, IEstimator<ITransformer>> pipeline)
    {
        BackOffModel backOff = BackOffTrainer.Train(calls);
        double[][]? others = readsBackOff ? BackOffTrainer.FromOtherJobs(calls, backOff.Needs) : null;
        int odds = readsBackOff ? backOff.Needs.Count : 0;
        var types = new SortedDictionary<string, TypeLearner>(StringComparer.Ordinal);
        foreach (IGrouping<string, int> type in Enumerable.Range(0, calls.Count).GroupBy(i => calls[i].Call.ApplianceType, StringComparer.Ordinal))
        {
            int[] rows = [.. type];
            if (rows.Length < LeastJobs || rows.Select(i => calls[i].Need).Distinct(StringComparer.Ordinal).Skip(1).FirstOrDefault() is null)
            {
                continue;
            }

            var context = new MLContext(seed);
            IDataView view = context.Data.LoadFromEnumerable(
                rows.Select(i => LearnerRow.From(calls[i].Call, calls[i].Need, others?[i])), LearnerSchema.For(odds));
            types[type.Key] = new TypeLearner(context, LearnerSchema.KeyNeeds(context).Append(pipeline(context)).Fit(view), odds);
        }

        return new LearnedPredictor(types, backOff, readsBackOff);
    }
}
