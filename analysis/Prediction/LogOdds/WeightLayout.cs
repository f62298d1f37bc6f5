namespace PartsSignal.Analysis.Prediction.LogOdds;

/// <summary>
/// Where the weights of each fact lie while they are learned. A fact met on one type of appliance has weights for the
/// needs of that type alone, side by side; one met on several has a weight per need there is. Most facts are of the first
/// sort, which keeps the table a quarter of its full size.
/// </summary>
internal sealed class WeightLayout
{
    private readonly int[] _first;
    private readonly int[] _firstShared;

    private WeightLayout(int[] first, int[] firstShared, int[] full) => (_first, _firstShared, Full) = (first, firstShared, full);

    /// <summary>Place of each weight in the full table, fact * needs + need.</summary>
    public int[] Full { get; }

    /// <summary>First weight of a fact: of its type's needs, or the complement of the first over all needs.</summary>
    public int First(int fact) => _first[fact];

    /// <summary>The weight all needs share, of a fact about one need.</summary>
    public int FirstShared(int fact) => _firstShared[fact];

    /// <summary>Lays out the weights of the facts of these rows, in the order they are met.</summary>
    public static WeightLayout Create(CodedFact[][] facts, int[][] allowed, LogOddsShape shape, CodedCalls coded)
    {
        int needs = shape.Needs.Count;
        int[]?[] typeOf = new int[coded.Count][];
        int[] everywhere = [.. Enumerable.Range(0, needs)];
        var met = new List<int>();
        for (int i = 0; i < facts.Length; i++)
        {
            foreach (CodedFact fact in facts[i])
            {
                int[]? before = typeOf[fact.Fact];
                if (before is null)
                {
                    met.Add(fact.Fact);
                }

                typeOf[fact.Fact] = fact.OnlyNeed is null && (before is null || ReferenceEquals(before, allowed[i])) ? allowed[i] : everywhere;
            }
        }

        var single = new HashSet<int>(facts.SelectMany(f => f).Where(f => f.OnlyNeed is not null).Select(f => f.Fact));
        int[] first = new int[coded.Count], firstShared = new int[coded.Count];
        var full = new List<int>();
        foreach (int fact in met)
        {
            (string key, FeatureGroup group) = coded[fact];
            int[] own = typeOf[fact]!;
            first[fact] = ReferenceEquals(own, everywhere) ? ~full.Count : full.Count;
            int row = shape.Space.Add(key, group) * needs;
            full.AddRange(own.Select(k => row + k));
            if (single.Contains(fact))
            {
                firstShared[fact] = full.Count;
                full.Add(shape.Space.Add(LogOddsShape.Shared(key), group) * needs);
            }
        }

        return new WeightLayout(first, firstShared, [.. full]);
    }

    /// <summary>The full table of learned weights.</summary>
    public double[] Spread(double[] weights, int length)
    {
        var table = new double[length];
        for (int j = 0; j < weights.Length; j++)
        {
            table[Full[j]] = weights[j];
        }

        return table;
    }
}
