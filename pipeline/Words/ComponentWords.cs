namespace PartsSignal.Pipeline.Words;

/// <summary>
/// Tells the component from a part's description. All words of a phrase must stand in the description, in any order
/// (lists write "valve, inlet, 2-way"); the phrase with the most words wins, then the one with the most letters, then
/// the earlier in the table.
/// </summary>
public sealed class ComponentWords
{
    private const int MaxCached = 100_000;
    private readonly Vocabulary _vocabulary = new();
    private readonly List<(int[] Ids, Phrase Phrase)> _phrases = [];
    private readonly Dictionary<string, string?> _cache = new(StringComparer.Ordinal);

    /// <summary>Prepares a table.</summary>
    public ComponentWords(IEnumerable<Phrase> phrases) => _phrases.AddRange(phrases
        .OrderByDescending(p => p.Stems.Count)
        .ThenByDescending(p => p.Stems.Sum(s => s.Length))
        .ThenBy(p => p.Order)
        .Select(p => (p.Stems.Select(_vocabulary.Id).ToArray(), p)));

    /// <summary>The component, or null where the words do not say.</summary>
    public string? Component(string? description)
    {
        if (string.IsNullOrWhiteSpace(description))
        {
            return null;
        }

        if (_cache.TryGetValue(description, out string? known))
        {
            return known;
        }

        string? component = Find(description);
        if (_cache.Count < MaxCached)
        {
            _cache.Add(description, component);
        }

        return component;
    }

    private string? Find(string description)
    {
        WordMatch[] words = [.. PlainWords.Split(description).Select(_vocabulary.Match)];
        HashSet<int> right = [.. words.SelectMany(w => w.Exact)];
        return Find(right) ?? Find([.. right, .. words.SelectMany(w => w.Close)]);
    }

    private string? Find(HashSet<int> ids)
    {
        foreach ((int[] wanted, Phrase phrase) in _phrases)
        {
            if (Array.TrueForAll(wanted, ids.Contains))
            {
                return phrase.Meaning;
            }
        }

        return null;
    }
}
