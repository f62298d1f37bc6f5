using System.Collections.Concurrent;
using PartsSignal.Analysis.Vocabulary;

namespace PartsSignal.Pipeline.Words;

/// <summary>
/// Tells the type of an appliance from its name. Whole names are compared first, then the name without words that every
/// appliance may bear (built-in, gas, 60 cm). Any other word makes it another appliance: a hair dryer is no dryer. A name
/// that the tables do not know stays the shop's own.
/// </summary>
internal sealed class ApplianceNames
{
    private const string GroupFile = "appliance-groups.csv";
    private const int MaxCached = 10_000;
    private const int LongestName = 40;
    private const int MostWords = 5;
    private static readonly HashSet<string> Beside = [.. WordTable.ReadDefault("appliance-qualifiers.txt").Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries).SelectMany(w => Tokenizer.Folded(w))];
    private static readonly HashSet<string> Groups =
    [
        .. WordTable.ReadDefault(GroupFile).Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).Skip(1)
            .SelectMany(l => l.Split(',')[1].Split('|')).Select(n => string.Join('_', Tokenizer.Folded(n))),
    ];

    private static readonly string[] Prefixes = ["einbau", "unterbau", "stand", "gas", "elektro", "mini", "inbouw"];
    private readonly Dictionary<string, string> _names = new(StringComparer.Ordinal);
    private readonly KnownWords _known = new();
    private readonly List<string> _stems = [];
    private readonly int _longest;
    private readonly BoundedCache<string, string?> _cache = new(MaxCached);
    private readonly BoundedCache<string, string?> _named = new(MaxCached);
    private readonly IReadOnlyList<KeywordRule> _rules;
    private readonly ConcurrentDictionary<string, ApplianceNames> _byLanguage = new(StringComparer.Ordinal);

    /// <summary>Prepares a table.</summary>
    public ApplianceNames(IReadOnlyList<KeywordRule> rules)
    {
        _rules = rules;
        foreach (KeywordRule rule in rules)
        {
            _names.TryAdd(string.Join(' ', rule.Stems), rule.Meaning);
            _names.TryAdd(rule.Meaning.Replace('_', ' '), rule.Meaning);
        }

        foreach (string word in _names.Keys.SelectMany(n => n.Split(' ')).Distinct(StringComparer.Ordinal))
        {
            _known.Id(word);
            _stems.Add(word);
        }

        _longest = _names.Keys.Max(n => n.Count(c => c == ' ') + 1);
    }

    /// <summary>Changes when the lists of words beside a name or of groups change.</summary>
    public static string Version => WordTable.ReadDefault("appliance-qualifiers.txt") + WordTable.ReadDefault(GroupFile);

    /// <summary>True for a type of the shop's own that is a group of appliances, <c>large_home_electrical</c>: it may be any of them.</summary>
    public static bool IsGroup(string? type) =>
        type is not null && !ApplianceType.Named.Contains(type) && Groups.Contains(string.Join('_', type.Split('_').SelectMany(w => Tokenizer.Folded(w))));

    /// <summary>The same with the words of some languages only.</summary>
    public ApplianceNames For(IReadOnlyList<string> languages) =>
        _byLanguage.GetOrAdd(string.Join(' ', languages), _ => new ApplianceNames([.. _rules.Where(r => r.IsIn(languages))]));

    /// <summary>The type that a cell names, or null where the tables do not know it.</summary>
    public string? Find(string? cell) =>
        string.IsNullOrWhiteSpace(cell) ? null
        : _cache.TryGet(cell, out string? known) ? known
        : _cache.Keep(cell, Read(cell));

    /// <summary>A type of the shop's own, <c>hair_dryer</c>, or null where the cell is no name.</summary>
    public static string? OwnName(string cell)
    {
        List<string> words = Tokenizer.Split(cell);
        string name = string.Join('_', words);
        return words.Count is 0 or > MostWords || name.Length > LongestName || !name.Any(char.IsLetter) ? null : name;
    }

    /// <summary>The only type that a text names, or null where it names none or several.</summary>
    public string? Named(string? text) =>
        string.IsNullOrWhiteSpace(text) ? null
        : _named.TryGet(text, out string? known) ? known
        : _named.Keep(text, NamedIn(Tokenizer.Folded(text)));

    private string? Read(string cell)
    {
        string[] parts = cell.Split([',', ';', '(', '+'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        List<string> words = [.. Tokenizer.Folded(cell).Select(Known)];
        return Whole(words)
            ?? Whole([.. words.Where(w => !IsBeside(w))])
            ?? (words.Count == 1 ? Prefixed(words[0]) : null)
            ?? (parts.Length > 1 ? Read(parts[0]) : null)
            ?? Alternatives(cell);
    }

    // "Fridge/freezer": both are the same type.
    private string? Alternatives(string cell)
    {
        string[] parts = cell.Split(['/', '&', '-'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        string?[] types = parts.Length < 2 ? [] : [.. parts.Select(p => Whole([.. Tokenizer.Folded(p).Select(Known)])).Distinct()];
        return types.Length == 1 ? types[0] : null;
    }

    private string? Whole(List<string> words) => _names.GetValueOrDefault(string.Join(' ', words));

    private string? Prefixed(string word)
    {
        foreach (string prefix in Prefixes)
        {
            if (word.Length > prefix.Length && word.StartsWith(prefix, StringComparison.Ordinal) && Whole([Known(word[prefix.Length..])]) is { } type)
            {
                return type;
            }
        }

        return null;
    }

    private static bool IsBeside(string word) => Beside.Contains(word) || word.AsSpan().ContainsAnyInRange('0', '9');

    // The word itself, or the one word of the table that it misspells.
    private string Known(string word)
    {
        WordMatch match = _known.Match(word);
        return match.Exact.Length == 0 && match.Close.Length == 1 && !IsBeside(word) ? _stems[match.Close[0]] : word;
    }

    private string? NamedIn(List<string> words)
    {
        string? only = null;
        for (int at = 0; at < words.Count; at++)
        {
            for (int length = Math.Min(_longest, words.Count - at); length > 0; length--)
            {
                string? type = words[at].Length < 3 ? null : _names.GetValueOrDefault(string.Join(' ', words[at..(at + length)]));
                // A word before an English name may make it another appliance.
                if (type is null or "other" || (at > 0 && !IsBeside(words[at - 1]) && !Says(words[at - 1])))
                {
                    continue;
                }

                if (only is not null && only != type)
                {
                    return null;
                }

                only = type;
                at += length - 1;
                break;
            }
        }

        return only;
    }

    private static bool Says(string word) => Openers.Contains(word);

    // Words after which an appliance is named: "the dryer", "my washer", "die Waschmaschine".
    private static readonly HashSet<string> Openers = [.. "the a an my our her his their this that old new and or die der das den dem ein eine einen mein meine le la les un une mon ma notre el los las una mi nuestra nuestro il lo una mio mia de het een mijn onze moja moj nasza".Split(' ')];
}
