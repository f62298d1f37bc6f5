using PartsSignal.Analysis.PartPrediction.Calls;

namespace PartsSignal.Analysis.PartPrediction.LogOdds;

/// <summary>Jobs as numbers: which facts each has, which needs its type can have, which it had.</summary>
internal sealed class DesignRows
{
    /// <summary>Facts that speak about every need: places and values of one row after another.</summary>
    public required int[] Places { get; init; }

    public required double[] Values { get; init; }

    /// <summary>First entry of each row, and one past the last.</summary>
    public required int[] Starts { get; init; }

    /// <summary>Facts that speak about one need: weight index, need, value.</summary>
    public required (int Weight, int Need, double Value)[] Singles { get; init; }

    public required int[] SingleStarts { get; init; }

    /// <summary>Needs each row's type can have.</summary>
    public required int[][] Allowed { get; init; }

    public required int[] Truth { get; init; }

    public int Count => Truth.Length;

    /// <summary>Encodes jobs; facts new to the space are added, the two forms of a single fact being its shared and its own weight.</summary>
    public static DesignRows Encode(IReadOnlyList<ClosedCall> calls, LogOddsShape shape)
    {
        var places = new List<int>();
        var values = new List<double>();
        var singles = new List<(int, int, double)>();
        int[] starts = new int[calls.Count + 1], singleStarts = new int[calls.Count + 1];
        for (int i = 0; i < calls.Count; i++)
        {
            foreach (Feature feature in CallFeatures.Of(calls[i].Call, shape.Kinds))
            {
                int place = shape.Space.Add(feature.Key, feature.Group);
                if (feature.OnlyNeed is null)
                {
                    places.Add(place);
                    values.Add(feature.Value);
                }
                else if (shape.Places.TryGetValue(feature.OnlyNeed, out int need))
                {
                    int shared = shape.Space.Add(LogOddsShape.Shared(feature.Key), feature.Group);
                    singles.Add((place * shape.Needs.Count + need, need, feature.Value));
                    singles.Add((shared * shape.Needs.Count, need, feature.Value));
                }
            }

            (starts[i + 1], singleStarts[i + 1]) = (places.Count, singles.Count);
        }

        return new DesignRows
        {
            Places = [.. places],
            Values = [.. values],
            Starts = starts,
            Singles = [.. singles],
            SingleStarts = singleStarts,
            Allowed = [.. calls.Select(c => shape.AllowedFor(c.Call.ApplianceType))],
            Truth = [.. calls.Select(c => shape.Places[c.Need])],
        };
    }
}
