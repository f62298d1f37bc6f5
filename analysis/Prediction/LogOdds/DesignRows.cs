namespace PartsSignal.Analysis.Prediction.LogOdds;

/// <summary>A fact of a row that speaks about every need.</summary>
/// <param name="Weight">
/// Its first weight. 0 or more: one weight per need of the row's type, side by side; below 0: the complement of the
/// first of one weight per need of any type.
/// </param>
/// <param name="Value">Its value.</param>
internal readonly record struct DesignEntry(int Weight, double Value);

/// <summary>A fact of a row that speaks about one need.</summary>
/// <param name="Weight">Its weight.</param>
/// <param name="Need">Place of the need among those of the row's type.</param>
/// <param name="Value">Its value.</param>
internal readonly record struct DesignSingle(int Weight, int Need, double Value);

/// <summary>Jobs as numbers: which facts each has, which needs its type can have, which it had.</summary>
internal sealed class DesignRows
{
    /// <summary>Facts about every need, one row after another.</summary>
    public required DesignEntry[] Entries { get; init; }

    /// <summary>First entry of each row, and one past the last.</summary>
    public required int[] Starts { get; init; }

    /// <summary>Facts about one need, one row after another.</summary>
    public required DesignSingle[] Singles { get; init; }

    /// <summary>First single of each row, and one past the last.</summary>
    public required int[] SingleStarts { get; init; }

    /// <summary>Needs each row's type can have.</summary>
    public required int[][] Allowed { get; init; }

    /// <summary>Place of each row's need among those its type can have.</summary>
    public required int[] Truth { get; init; }

    /// <summary>Number of rows.</summary>
    public int Count => Truth.Length;

    /// <summary>Encodes jobs; their facts are added to the shape's space.</summary>
    public static (DesignRows Rows, WeightLayout Layout) Encode(IReadOnlyList<ClosedCall> calls, LogOddsShape shape, CodedCalls coded)
    {
        CodedFact[][] facts = [.. calls.Select(c => coded.Of(c.Call))];
        int[][] allowed = [.. calls.Select(c => shape.AllowedFor(c.Call.ApplianceType))];
        WeightLayout layout = WeightLayout.Create(facts, allowed, shape, coded);
        var entries = new List<DesignEntry>();
        var singles = new List<DesignSingle>();
        int[] starts = new int[calls.Count + 1], singleStarts = new int[calls.Count + 1];
        for (int i = 0; i < facts.Length; i++)
        {
            foreach (CodedFact fact in facts[i])
            {
                if (fact.OnlyNeed is null)
                {
                    entries.Add(new DesignEntry(layout.First(fact.Fact), fact.Value));
                }
                else if (shape.Places.TryGetValue(fact.OnlyNeed, out int need) && Array.BinarySearch(allowed[i], need) is >= 0 and int place)
                {
                    singles.Add(new DesignSingle(~layout.First(fact.Fact) + need, place, fact.Value));
                    singles.Add(new DesignSingle(layout.FirstShared(fact.Fact), place, fact.Value));
                }
            }

            (starts[i + 1], singleStarts[i + 1]) = (entries.Count, singles.Count);
        }

        int[] truth = [.. calls.Select((c, i) => Array.BinarySearch(allowed[i], shape.Places[c.Need]))];
        return (new DesignRows
        {
            Entries = [.. entries],
            Starts = starts,
            Singles = [.. singles],
            SingleStarts = singleStarts,
            Allowed = allowed,
            Truth = truth,
        }, layout);
    }
}
