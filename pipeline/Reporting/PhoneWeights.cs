using PartsSignal.Analysis.Prediction.LogOdds;
using PartsSignal.Analysis.Prediction.ModelFiles;
using PartsSignal.Reports.Phone;

namespace PartsSignal.Pipeline.Reporting;

/// <summary>The predictor's weights, rounded so that the phone page stays small.</summary>
internal static class PhoneWeights
{
    /// <summary>Weights are rounded to thousandths of a log-odds unit; this changes odds by less than one percent.</summary>
    public const int Scale = 1000;

    /// <summary>The weights, or null if the predictor is not a sum of weights.</summary>
    public static LookupWeights? From(ShippedModel model)
    {
        if (model.Predictor is not LogOddsModel sums)
        {
            return null;
        }

        var facts = new SortedDictionary<string, IReadOnlyList<int>>(StringComparer.Ordinal);
        for (int f = 0; f < sums.Shape.Space.Count; f++)
        {
            string key = sums.Shape.Space.Features[f].Key;
            if (Rounded(sums.WeightsOf(f)) is { Count: > 0 } row)
            {
                facts[key] = row;
            }
        }

        return new LookupWeights(
            Scale, facts, new SortedDictionary<string, int[]>(sums.Shape.Allowed.ToDictionary(), StringComparer.Ordinal),
            [.. sums.Background.Select(b => Math.Round(b, 8))], LogOddsModel.BackgroundShare, model.Temperature,
            sums.Shape.Kinds.Words.Words,
            new LookupReader(
                sums.Shape.Kinds.Kinds, sums.Shape.Kinds.Jobs, new SortedDictionary<string, int[]>(sums.Shape.Kinds.Counts.ToDictionary(), StringComparer.Ordinal)));
    }

    private static IReadOnlyList<int> Rounded(ReadOnlySpan<double> weights)
    {
        var row = new List<int>();
        for (int k = 0; k < weights.Length; k++)
        {
            int weight = (int)Math.Round(weights[k] * Scale);
            if (weight != 0)
            {
                row.Add(k);
                row.Add(weight);
            }
        }

        return row;
    }
}
