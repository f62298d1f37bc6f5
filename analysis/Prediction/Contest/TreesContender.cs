using System.Runtime.InteropServices;
using Microsoft.ML;
using Microsoft.ML.Trainers.LightGbm;
using Microsoft.ML.Transforms;
using PartsSignal.Analysis.Prediction.MachineLearning;

namespace PartsSignal.Analysis.Prediction.Contest;

/// <summary>Boosted trees on plain facts and the back-off's odds, each job's odds taken from the other jobs alone.</summary>
/// <param name="seed">Seed of the learner.</param>
/// <param name="hasLibrary">Whether a native library can be loaded, or null to ask the system.</param>
internal sealed class TreesContender(int seed, Func<string, bool>? hasLibrary = null) : IContender
{
    private const string Library = "lib_lightgbm";

    /// <inheritdoc/>
    public string Name => "trees";

    /// <inheritdoc/>
    public string What => "Boosted trees on plain facts, age, season and the back-off's odds, per type of appliance.";

    /// <inheritdoc/>
    public int Complexity => 5;

    /// <inheritdoc/>
    public string? Missing => (hasLibrary ?? CanLoad)(Library) ? null : $"its native library ({Library}) does not come for this kind of machine";

    /// <inheritdoc/>
    public IPredictor Train(IReadOnlyList<ClosedCall> calls, IPredictor? earlier = null) =>
        TypeTraining.Train(calls, seed, readsBackOff: true, Pipeline);

    private static bool CanLoad(string library)
    {
        bool found = NativeLibrary.TryLoad(library, typeof(LightGbmMulticlassTrainer).Assembly, null, out nint handle);
        if (found)
        {
            NativeLibrary.Free(handle);
        }

        return found;
    }

    private IEstimator<ITransformer> Pipeline(MLContext context) => context.Transforms
        .Categorical.OneHotHashEncoding("FactsHot", nameof(LearnerRow.Facts), OneHotEncodingEstimator.OutputKind.Bag, numberOfBits: 9)
        .Append(context.Transforms.Concatenate("Features", nameof(LearnerRow.BackOff), nameof(LearnerRow.Numbers), "FactsHot"))
        .AppendCacheCheckpoint(context)
        .Append(context.MulticlassClassification.Trainers.LightGbm(new LightGbmMulticlassTrainer.Options
        {
            LabelColumnName = LearnerSchema.NeedKey,
            NumberOfIterations = 50,
            NumberOfLeaves = 3,
            MinimumExampleCountPerLeaf = 30,
            LearningRate = 0.1,
            MaximumBinCountPerFeature = 63,
            NumberOfThreads = 1,
            Seed = seed,
            Deterministic = true,
            UseSoftmax = true,
            Silent = true,
        }));
}
