namespace PartsSignal.Analysis.Prediction.LogOdds;

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
