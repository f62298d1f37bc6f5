using Microsoft.ML;
using Microsoft.ML.Data;
using Microsoft.ML.Trainers;
using Microsoft.ML.Transforms.Text;
using PartsSignal.Analysis.PartPrediction.BackOff;
using PartsSignal.Analysis.PartPrediction.Calls;
using PartsSignal.Analysis.PartPrediction.Contest;

namespace PartsSignal.Analysis.PartPrediction.MachineLearning;

/// <summary>Multinomial logistic regression on words, letters and plain facts.</summary>
public sealed class TextContender(int seed) : IContender
{
    /// <inheritdoc/>
    public string Name => "text";

    /// <inheritdoc/>
    public string What => "Multinomial logistic regression on one and two words, three to five letters, and plain facts.";

    /// <inheritdoc/>
    public int Complexity => 4;

    /// <inheritdoc/>
    public IPredictor Train(IReadOnlyList<ClosedCall> calls, IPredictor? earlier = null)
    {
        if (NeedList.Of(calls).Length < 2)
        {
            return BackOffTrainer.Train(calls);
        }

        var context = new MLContext(seed);
        IDataView rows = context.Data.LoadFromEnumerable(
            calls.TakeLast(LearnerRow.Newest).Select(c => LearnerRow.Of(c.Call, c.Need, null)), LearnerSchema.For(0));
        IEstimator<ITransformer> pipeline = LearnerSchema.KeyNeeds(context)
            .Append(context.Transforms.Categorical.OneHotHashEncoding("FactsHot", nameof(LearnerRow.Facts), Microsoft.ML.Transforms.OneHotEncodingEstimator.OutputKind.Bag, numberOfBits: 10))
            .Append(context.Transforms.Text.TokenizeIntoWords("Words", nameof(LearnerRow.Text), [' ', ',', ';', '.', '/', '-']))
            .Append(context.Transforms.Conversion.MapValueToKey("Words", maximumNumberOfKeys: 5_000))
            .Append(context.Transforms.Text.ProduceNgrams("WordGrams", "Words", 2, 0, true, 1_500, NgramExtractingEstimator.WeightingCriteria.TfIdf))
            .Append(context.Transforms.Text.TokenizeIntoCharactersAsKeys("Letters", nameof(LearnerRow.Text), useMarkerCharacters: true))
            .Append(context.Transforms.Text.ProduceHashedNgrams("LetterGrams", "Letters", numberOfBits: 11, ngramLength: 5, skipLength: 0, useAllLengths: true))
            .Append(context.Transforms.NormalizeLpNorm("WordGrams"))
            .Append(context.Transforms.NormalizeLpNorm("LetterGrams"))
            .Append(context.Transforms.Concatenate("Features", "FactsHot", "WordGrams", "LetterGrams", nameof(LearnerRow.Numbers)))
            .Append(context.MulticlassClassification.Trainers.SdcaMaximumEntropy(new SdcaMaximumEntropyMulticlassTrainer.Options
            {
                LabelColumnName = LearnerSchema.NeedKey,
                NumberOfThreads = 1,
                MaximumNumberOfIterations = 12,
                ConvergenceTolerance = 0.02f,
            }));
        return new LearnedPredictor(context, pipeline.Fit(rows), null);
    }
}
