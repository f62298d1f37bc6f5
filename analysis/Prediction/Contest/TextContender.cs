using Microsoft.ML;
using Microsoft.ML.Trainers;
using Microsoft.ML.Transforms;
using Microsoft.ML.Transforms.Text;
using PartsSignal.Analysis.Prediction.MachineLearning;

namespace PartsSignal.Analysis.Prediction.Contest;

/// <summary>Multinomial logistic regression on words, letters and plain facts.</summary>
internal sealed class TextContender(int seed) : IContender
{
    /// <inheritdoc/>
    public string Name => "text";

    /// <inheritdoc/>
    public string What => "Multinomial logistic regression on one and two words, three to five letters, and plain facts, per type of appliance.";

    /// <inheritdoc/>
    public int Complexity => 4;

    /// <inheritdoc/>
    public IPredictor Train(IReadOnlyList<ClosedCall> calls, IPredictor? earlier = null) =>
        TypeTraining.Train(calls, seed, readsBackOff: false, Pipeline);

    private static IEstimator<ITransformer> Pipeline(MLContext context) => context.Transforms
        .Categorical.OneHotHashEncoding("FactsHot", nameof(LearnerRow.Facts), OneHotEncodingEstimator.OutputKind.Bag, numberOfBits: 11)
        .Append(context.Transforms.Text.TokenizeIntoWords("Words", nameof(LearnerRow.Text), [' ', ',', ';', '.', '/', '-']))
        .Append(context.Transforms.Conversion.MapValueToKey("Words", maximumNumberOfKeys: 5_000))
        .Append(context.Transforms.Text.ProduceNgrams("WordGrams", "Words", 2, 0, true, 1_500, NgramExtractingEstimator.WeightingCriteria.TfIdf))
        .Append(context.Transforms.Text.TokenizeIntoCharactersAsKeys("Letters", nameof(LearnerRow.Text), useMarkerCharacters: true))
        .Append(context.Transforms.Text.ProduceHashedNgrams("LetterGrams", "Letters", numberOfBits: 10, ngramLength: 5, skipLength: 0, useAllLengths: true))
        .Append(context.Transforms.NormalizeLpNorm("WordGrams"))
        .Append(context.Transforms.NormalizeLpNorm("LetterGrams"))
        .Append(context.Transforms.Concatenate("Features", "FactsHot", "WordGrams", "LetterGrams", nameof(LearnerRow.Numbers)))
        .AppendCacheCheckpoint(context)
        .Append(context.MulticlassClassification.Trainers.SdcaMaximumEntropy(new SdcaMaximumEntropyMulticlassTrainer.Options
        {
            LabelColumnName = LearnerSchema.NeedKey,
            NumberOfThreads = 1,
            MaximumNumberOfIterations = 8,
            ConvergenceTolerance = 0.001f,
            L1Regularization = 0,
            L2Regularization = 2e-3f,
        }));
}
