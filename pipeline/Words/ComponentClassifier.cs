namespace PartsSignal.Pipeline.Words;

/// <summary>
/// Tells the component from a part's description. All words of a phrase must stand in the description, in any order
/// (lists write "valve, inlet, 2-way"); the phrase with the most words wins, then the one with the most letters, then
/// the earlier in the table.
/// </summary>
internal sealed class ComponentClassifier
{
    private const int MaxCached = 100_000;
    private readonly KnownWords _known = new();
    private readonly List<(int[] Ids, KeywordRule Phrase)> _phrases = [];
    private readonly BoundedCache<string, string?> _cache = new(MaxCached);

    /// <summary>Prepares a table.</summary>
    public ComponentClassifier(IEnumerable<KeywordRule> phrases) => _phrases.AddRange(phrases
        .OrderByDescending(p => p.Stems.Count)
        .ThenByDescending(p => p.Stems.Sum(s => s.Length))
        .ThenBy(p => p.Order)
        .Select(p => (p.Stems.Select(_known.Id).ToArray(), p)));

    /// <summary>The component, or null where the words do not say.</summary>
    public string? Component(string? description)
    {
        if (string.IsNullOrWhiteSpace(description))
        {
            return null;
        }

        return _cache.TryGet(description, out string? known) ? known : _cache.Keep(description, Find(description));
    }

    private string? Find(string description)
    {
        WordMatch[] words = [.. Tokenizer.Split(description).Select(_known.Match)];
        HashSet<int> right = [.. words.SelectMany(w => w.Exact)];
        return Find(right) ?? Find([.. right, .. words.SelectMany(w => w.Close)]);
    }

    private string? Find(HashSet<int> ids)
    {
        foreach ((int[] wanted, KeywordRule phrase) in _phrases)
        {
            if (Array.TrueForAll(wanted, ids.Contains))
            {
                return phrase.Meaning;
            }
        }

        return null;
    }
}
