using System.Collections.Concurrent;

namespace PartsSignal.Pipeline.Words;

/// <summary>
/// Tells the component from a part's description. The words of a phrase may stand in any order (lists write "valve, inlet,
/// 2-way"); the phrase with the most words wins, then the one with the most letters, then the earlier in the table. A phrase
/// counts only if no other word says that the part is something else: a "drain motor" is no motor, a "pump cover" no pump.
/// </summary>
internal sealed class ComponentClassifier
{
    private const int MaxCached = 100_000;
    private readonly IReadOnlyList<KeywordRule> _rules;
    private readonly IReadOnlySet<string> _accessories;
    private readonly KnownWords _known = new();
    private readonly List<(int[] Ids, KeywordRule Phrase)> _phrases = [];
    private readonly Dictionary<string, HashSet<int>> _wordsOf = new(StringComparer.Ordinal);
    private readonly HashSet<int> _names = [];
    private readonly BoundedCache<string, string?> _cache = new(MaxCached);
    private readonly ConcurrentDictionary<string, ComponentClassifier> _byLanguage = new(StringComparer.Ordinal);

    /// <summary>Prepares a table.</summary>
    /// <param name="rules">Its phrases.</param>
    /// <param name="accessories">Components that go with others, which their last word names: the filter of a pump is a filter.</param>
    public ComponentClassifier(IEnumerable<KeywordRule> rules, IReadOnlySet<string>? accessories = null)
    {
        _rules = [.. rules];
        _accessories = accessories ?? new HashSet<string>();
        _phrases.AddRange(_rules
            .OrderByDescending(p => p.Stems.Count)
            .ThenByDescending(p => p.Stems.Sum(s => s.Length))
            .ThenBy(p => p.Order)
            .Select(p => (p.Stems.Select(_known.Id).ToArray(), p)));
        foreach ((int[] ids, KeywordRule phrase) in _phrases)
        {
            if (!_wordsOf.TryGetValue(phrase.Meaning, out HashSet<int>? words))
            {
                _wordsOf.Add(phrase.Meaning, words = []);
            }

            words.UnionWith(ids);
            _names.UnionWith(ids);
        }
    }

    /// <summary>The same with the words of some languages only; English where none of the table's is among them.</summary>
    public ComponentClassifier For(IReadOnlyList<string> languages) =>
        _byLanguage.GetOrAdd(string.Join(' ', languages), _ => new ComponentClassifier(_rules.Where(r => r.IsIn(languages)), _accessories));

    /// <summary>True for the name of a component of the table.</summary>
    public bool IsName(string name) => _wordsOf.ContainsKey(name);

    /// <summary>The component, or null where the words do not say.</summary>
    public string? Component(string? description)
    {
        if (string.IsNullOrWhiteSpace(description))
        {
            return null;
        }

        return _cache.TryGet(description, out string? known) ? known : _cache.Keep(description, Find(PartPhrase.Parse(description), strict: true));
    }

    /// <summary>Whether the words say more than the name of their component: <c>range thermostat</c> does, <c>termostato</c> does not.</summary>
    public bool SaysMore(string description) =>
        Component(description) is not { } component
        || PartPhrase.Parse(description).Telling.Any(w => !_known.Match(w).Exact.Any(_wordsOf[component].Contains));

    /// <summary>The component that the words most likely mean, where a word that no table knows stands beside them.</summary>
    public string? LikelyComponent(string description) => Find(PartPhrase.Parse(description), strict: false);

    private string? Find(PartPhrase part, bool strict)
    {
        if (part.Head.Length == 0)
        {
            return null;
        }

        WordMatch[] head = [.. part.Head.Select(_known.Match)];
        WordMatch[] all = [.. part.All.Select(_known.Match)];
        return Find(part, head, all, w => w.Exact, strict) ?? Find(part, head, all, w => w.Exact.Length > 0 ? w.Exact : w.Close, strict);
    }

    private string? Find(PartPhrase part, WordMatch[] head, WordMatch[] all, Func<WordMatch, int[]> read, bool strict)
    {
        HashSet<int> own = [.. head.SelectMany(read)];
        HashSet<int> any = [.. all.SelectMany(read)];
        int last = Array.FindLastIndex(part.Head, w => !PartPhrase.IsPlain(w));
        foreach ((int[] wanted, KeywordRule phrase) in _phrases)
        {
            // "Seal for the door": what it is stands in front, which one behind.
            if (Array.TrueForAll(wanted, any.Contains) && Array.Exists(wanted, own.Contains) && Fits(part, head, read, wanted, phrase, last, strict))
            {
                return phrase.Meaning;
            }
        }

        return null;
    }

    private bool Fits(PartPhrase part, WordMatch[] head, Func<WordMatch, int[]> read, int[] wanted, KeywordRule phrase, int last, bool strict)
    {
        HashSet<int> own = _wordsOf[phrase.Meaning];
        bool isLast = last >= 0 && read(head[last]).Intersect(wanted).Any();
        if (_accessories.Contains(phrase.Meaning))
        {
            // Whatever it belongs to, its own word comes last, or first before a comma.
            return isLast || read(head[0]).Intersect(wanted).Any();
        }

        for (int i = 0; i < part.Head.Length; i++)
        {
            int[] ids = read(head[i]);
            if (PartPhrase.IsPlain(part.Head[i]) || ids.Any(own.Contains))
            {
                continue;
            }

            bool isOther = ids.Length > 0 && ids.Any(_names.Contains);
            bool isHardware = part.IsAccessory && PartPhrase.IsHardware(part.Head[i]);
            if (isHardware || (isOther && (wanted.Length == 1 || IsName(ids))) || (strict && wanted.Length == 1))
            {
                return false;
            }
        }

        return true;
    }

    // A word that alone names a component: beside two words of another it tells what of it.
    private bool IsName(int[] ids) => _phrases.Exists(p => p.Ids.Length == 1 && ids.Contains(p.Ids[0]));
}
