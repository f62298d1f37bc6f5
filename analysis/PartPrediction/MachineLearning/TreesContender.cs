using Microsoft.ML;
using Microsoft.ML.Trainers.LightGbm;
using PartsSignal.Analysis.PartPrediction.BackOff;
using PartsSignal.Analysis.PartPrediction.Calls;
using PartsSignal.Analysis.PartPrediction.Contest;

namespace PartsSignal.Analysis.PartPrediction.MachineLearning;

/// <summary>Boosted trees on plain facts and the back-off's odds, each job's odds taken from the other jobs alone.</summary>
public sealed class TreesContender(int seed) : IContender
{
    /// <inheritdoc/>
    public string Name => "trees";

    /// <inheritdoc/>
    public string What => "Boosted trees on plain facts, age, season and the back-off's odds.";

    /// <inheritdoc/>
    public int Complexity => 5;

    /// <inheritdoc/>
    public IPredictor Train(IReadOnlyList<ClosedCall> calls, IPredictor? earlier = null)
    {
        BackOffModel backOff = BackOffTrainer.Train(calls);
        if (backOff.Needs.Count < 2)
        {
            return backOff;
        }

        ClosedCall[] newest = [.. calls.TakeLast(LearnerRow.Newest)];
        double[][] others = BackOffTrainer.FromOtherJobs(newest, backOff.Needs);
        var context = new MLContext(seed);
        IDataView rows = context.Data.LoadFromEnumerable(
            newest.Select((c, i) => LearnerRow.Of(c.Call, c.Need, others[i])), LearnerSchema.For(backOff.Needs.Count));
        IEstimator<ITransformer> pipeline = LearnerSchema.KeyNeeds(context)
            .Append(context.Transforms.Categorical.OneHotHashEncoding("FactsHot", nameof(LearnerRow.Facts), Microsoft.ML.Transforms.OneHotEncodingEstimator.OutputKind.Bag, numberOfBits: 9))
            .Append(context.Transforms.Concatenate("Features", nameof(LearnerRow.BackOff), nameof(LearnerRow.Numbers), "FactsHot"))
            .Append(context.MulticlassClassification.Trainers.LightGbm(new LightGbmMulticlassTrainer.Options
            {
                LabelColumnName = LearnerSchema.NeedKey,
                NumberOfIterations = 30,
                NumberOfLeaves = 8,
                MinimumExampleCountPerLeaf = 30,
                LearningRate = 0.1,
                MaximumBinCountPerFeature = 63,
                NumberOfThreads = 1,
                Seed = seed,
                Deterministic = true,
                UseSoftmax = true,
                Silent = true,
            }));
        return new LearnedPredictor(context, pipeline.Fit(rows), backOff);
    }
}
