namespace PartsSignal.Analysis.Prediction.LogOdds;

/// <summary>
/// Kinds of fact a call offers. All weights of a group share one spread (the standard deviation of their prior), which
/// is learned: a group that tells nothing shrinks to nothing.
/// </summary>
public enum FeatureGroup
{
    /// <summary>Base rate of each need on a type of appliance.</summary>
    Type,

    /// <summary>Complaint kind, whatever the appliance.</summary>
    Kind,

    /// <summary>Complaint kind on a type.</summary>
    TypeKind,

    /// <summary>Brand on a type.</summary>
    Brand,

    /// <summary>Model family.</summary>
    Family,

    /// <summary>Model number within its family.</summary>
    Model,

    /// <summary>Complaint kind on a family.</summary>
    FamilyKind,

    /// <summary>Logarithm of age: the slope is what a Weibull life contributes.</summary>
    Age,

    /// <summary>Age band on a type, for what the slope misses.</summary>
    AgeBand,

    /// <summary>Season, as the first harmonic of the year.</summary>
    Season,

    /// <summary>Error code, alone and by brand.</summary>
    Code,

    /// <summary>Household or contract.</summary>
    Customer,

    /// <summary>Words of the complaint.</summary>
    Word,

    /// <summary>What was done on this unit before.</summary>
    History,

    /// <summary>The need that was already met on this unit, and how long ago.</summary>
    Renewed,

    /// <summary>Quarter a family's young appliance was built in: bad batches show here.</summary>
    Batch,

    /// <summary>Age slope of a complaint kind: what needs no part is many things, and their mix moves with age and complaint.</summary>
    AgeKind,

    /// <summary>Words of a complaint whose kind no table tells.</summary>
    UnreadWord,
}

/// <summary>Every fact met in training, with its place in the table of weights.</summary>
public sealed class FeatureSpace
{
    private readonly Dictionary<string, int> _places = new(StringComparer.Ordinal);
    private readonly List<(string Key, FeatureGroup Group)> _features = [];

    /// <summary>Number of facts.</summary>
    public int Count => _features.Count;

    /// <summary>The facts in the order of their places.</summary>
    public IReadOnlyList<(string Key, FeatureGroup Group)> Features => _features;

    /// <summary>Place of a fact; -1: never met.</summary>
    public int Find(string key) => _places.GetValueOrDefault(key, -1);

    /// <summary>Place of a fact, given one if it is new.</summary>
    public int Add(string key, FeatureGroup group)
    {
        if (!_places.TryGetValue(key, out int place))
        {
            _places[key] = place = _features.Count;
            _features.Add((key, group));
        }

        return place;
    }
}
