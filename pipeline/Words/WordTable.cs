using CsvHelper;
using PartsSignal.Pipeline.Core;

namespace PartsSignal.Pipeline.Words;

/// <summary>
/// Reads a table of words: columns meaning, appliance types (<c>a|b</c>, or <c>*</c>), language (<c>de</c>, or empty for
/// all), words (phrases divided by <c>|</c>); further columns are for others. A shop's own table comes first; a row in it
/// without words clears the shipped words of that meaning.
/// </summary>
internal static class WordTable
{
    /// <summary>A shipped table.</summary>
    public static string ReadDefault(string name)
    {
        using Stream stream = typeof(WordTable).Assembly.GetManifestResourceStream("Defaults/" + name)
            ?? throw new ArgumentException($"No shipped table '{name}'.", nameof(name));
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }

    /// <summary>Phrases of the shop's own table, then of the shipped one.</summary>
    /// <param name="shipped">Text of the shipped table.</param>
    /// <param name="own">Text of the shop's, or null if it has none.</param>
    /// <param name="meaning">Header of the meaning column.</param>
    /// <param name="ownName">Name of the shop's file, for faults.</param>
    /// <exception cref="BadInputException">The shop's table lacks a column.</exception>
    public static IReadOnlyList<KeywordRule> Read(string shipped, string? own, string meaning, string ownName)
    {
        var phrases = new List<KeywordRule>();
        var cleared = new HashSet<string>(StringComparer.Ordinal);
        if (own is not null)
        {
            Add(own, meaning, ownName, phrases, cleared);
        }

        var rest = new List<KeywordRule>();
        Add(shipped, meaning, "shipped table", rest, []);
        phrases.AddRange(rest.Where(p => !cleared.Contains(p.Meaning)));
        return [.. phrases.Select((p, i) => p with { Order = i })];
    }

    private static void Add(string text, string meaning, string file, List<KeywordRule> phrases, HashSet<string> cleared)
    {
        using var csv = CsvReader.FromText(text, new CsvReaderOptions { Separator = ',', TrimWhitespace = true });
        csv.ReadHeader();
        string[] lacking = [.. new[] { meaning, "words" }.Where(n => !csv.TryGetFieldIndex(n, out _))];
        if (lacking.Length > 0)
        {
            throw new BadInputException([.. lacking.Select(l => $"{file}: has no column '{l}'. It needs {meaning}, appliance_types and words.")]);
        }

        bool typed = csv.TryGetFieldIndex("appliance_types", out int types);
        bool spoken = csv.TryGetFieldIndex("language", out int languages);
        while (csv.Read())
        {
            string what = csv.GetString(meaning);
            string[] words = csv.GetString("words").Split('|', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
            if (words.Length == 0)
            {
                cleared.Add(what);
            }

            string scope = typed ? csv.GetString(types) : "*";
            IReadOnlySet<string>? holds = scope is "" or "*" ? null : scope.Split('|', StringSplitOptions.TrimEntries).ToHashSet(StringComparer.Ordinal);
            string? language = spoken && csv.GetString(languages) is { Length: > 0 } told ? told : null;
            phrases.AddRange(words.SelectMany(Writings).Select(w => new KeywordRule(what, holds, Tokenizer.Folded(w, keepStars: true), 0) { Language = language }).Where(p => p.Stems.Count > 0));
        }
    }

    // Where a keyboard has no umlauts, people write them with two letters.
    private static IEnumerable<string> Writings(string words)
    {
        yield return words;
        string plain = words.Replace("\u00e4", "ae", StringComparison.Ordinal).Replace("\u00f6", "oe", StringComparison.Ordinal).Replace("\u00fc", "ue", StringComparison.Ordinal);
        if (plain != words)
        {
            yield return plain;
        }
    }
}

/// <summary>Words that stand for one meaning.</summary>
/// <param name="Meaning">What they mean: a complaint kind, a component.</param>
/// <param name="Types">Appliance types they hold for, or null for all.</param>
/// <param name="Stems">The words in order, lower case; one that ends in <c>*</c> matches every word that begins so.</param>
/// <param name="Order">Position in the table; the earlier wins a tie.</param>
internal sealed record KeywordRule(string Meaning, IReadOnlySet<string>? Types, IReadOnlyList<string> Stems, int Order)
{
    /// <summary>Language of the words, or null where they hold in every language: the shop's own.</summary>
    public string? Language { get; init; }

    /// <summary>True for words of one of these languages.</summary>
    public bool IsIn(IReadOnlyList<string> languages) => Language is null || languages.Contains(Language);

    /// <summary>True when the phrase holds for that type; where the type is not told, every phrase does.</summary>
    public bool Holds(string? type) => Types is null || type is null || Types.Contains(type);
}

/// <summary>Whole cells that stand for one of our words: outcomes, customer kinds, size classes.</summary>
internal sealed class SynonymTable
{
    private const int MaxCached = 10_000;
    private readonly Dictionary<string, string> _exact = new(StringComparer.Ordinal);
    private readonly BoundedCache<string, string?> _cache = new(MaxCached);
    private readonly KnownWords _known = new();
    private readonly List<(int[] Ids, KeywordRule Phrase)> _phrases = [];

    /// <summary>Prepares a table.</summary>
    /// <param name="phrases">The words.</param>
    /// <param name="first">The meaning that wins where a cell has words of several, each of one word; null: the longest word wins.</param>
    public SynonymTable(IReadOnlyList<KeywordRule> phrases, string? first = null)
    {
        foreach (KeywordRule phrase in phrases)
        {
            _exact.TryAdd(string.Join(' ', phrase.Stems), phrase.Meaning);
            _exact.TryAdd(phrase.Meaning.Replace('_', ' '), phrase.Meaning);
        }

        _phrases.AddRange(phrases
            .OrderByDescending(p => p.Stems.Count)
            .ThenByDescending(p => p.Meaning == first)
            .ThenByDescending(p => p.Stems.Sum(s => s.Length))
            .ThenBy(p => p.Order)
            .Select(p => (p.Stems.Select(_known.Id).ToArray(), p)));
    }

    /// <summary>Our word for a whole cell, or null if unknown.</summary>
    public string? FindWhole(string? cell) => string.IsNullOrWhiteSpace(cell) ? null : _exact.GetValueOrDefault(string.Join(' ', Tokenizer.Folded(cell)));

    /// <summary>Our word for a cell: by the whole cell, else by the words in it, or null if unknown.</summary>
    public string? Find(string? cell) =>
        string.IsNullOrWhiteSpace(cell) ? null
        : _cache.TryGet(cell, out string? known) ? known
        : _cache.Keep(cell, Read(Tokenizer.Folded(cell)));

    private string? Read(List<string> typed)
    {
        if (_exact.TryGetValue(string.Join(' ', typed), out string? whole))
        {
            return whole;
        }

        WordMatch[] words = [.. typed.Select(_known.Match)];
        HashSet<int> right = [.. words.SelectMany(w => w.Exact)];
        return Within(right) ?? Within([.. right, .. words.SelectMany(w => w.Close)]);
    }

    // All words of a phrase stand in the cell; the longest phrase wins.
    private string? Within(HashSet<int> words)
    {
        foreach ((int[] wanted, KeywordRule phrase) in _phrases)
        {
            if (Array.TrueForAll(wanted, words.Contains))
            {
                return phrase.Meaning;
            }
        }

        return null;
    }
}
