using System.Collections.Concurrent;

namespace PartsSignal.Analysis.Prediction.LogOdds;

/// <summary>A fact of a call by number.</summary>
/// <param name="Fact">Number of the fact, counted over all calls of the table.</param>
/// <param name="Value">Its value.</param>
/// <param name="OnlyNeed">The one need it speaks about, or null if it speaks about every need.</param>
internal readonly record struct CodedFact(int Fact, double Value, string? OnlyNeed);

/// <summary>
/// Facts of calls, put together once and kept: trainings that follow one another read the same complaints the same way,
/// so only calls that are new cost anything.
/// </summary>
internal sealed class CodedCalls(LearnedComplaintReader kinds)
{
    private readonly Dictionary<string, int> _numbers = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<Call, CodedFact[]> _calls = new(ReferenceEqualityComparer.Instance);
    private readonly Lock _gate = new();
    private readonly List<(string Key, FeatureGroup Group)> _facts = [];

    /// <summary>How complaints are read.</summary>
    public LearnedComplaintReader Kinds => kinds;

    /// <summary>Number of facts met so far.</summary>
    public int Count => _facts.Count;

    /// <summary>Name and group of a fact.</summary>
    public (string Key, FeatureGroup Group) this[int fact] => _facts[fact];

    /// <summary>The facts of a call.</summary>
    public CodedFact[] Of(Call call)
    {
        if (_calls.TryGetValue(call, out CodedFact[]? known))
        {
            return known;
        }

        Feature[] features = [.. CallFeatures.From(call, kinds)];
        lock (_gate)
        {
            return _calls[call] = [.. features.Select(f => new CodedFact(Number(f.Key, f.Group), f.Value, f.OnlyNeed))];
        }
    }

    private int Number(string key, FeatureGroup group)
    {
        if (!_numbers.TryGetValue(key, out int number))
        {
            _numbers[key] = number = _facts.Count;
            _facts.Add((key, group));
        }

        return number;
    }
}
