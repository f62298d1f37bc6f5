namespace PartsSignal.Pipeline.Words;

/// <summary>
/// Words that deny what stands beside them: "not noisy" is no noise, "leckt nicht" no leak. A phrase of the tables that
/// holds such a word itself ("not cooling") means what it says.
/// </summary>
internal sealed class Negations
{
    private const string File = "negation-words.csv";
    private const int MostBetween = 2;
    private readonly HashSet<string> _before;
    private readonly HashSet<string> _between;
    private readonly HashSet<string> _after;

    private Negations(IReadOnlyList<string>? languages)
    {
        Dictionary<string, HashSet<string>> classes = WordTable.ReadDefault(File).Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).Skip(1)
            .Select(l => l.Split(','))
            .Where(c => languages is null || languages.Contains(c[1]))
            .GroupBy(c => c[0], StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => g.SelectMany(c => c[2].Split('|')).ToHashSet(StringComparer.Ordinal), StringComparer.Ordinal);
        (_before, _between, _after) = (Of("before"), Of("between"), Of("after"));

        HashSet<string> Of(string name) => classes.GetValueOrDefault(name) ?? [];
    }

    /// <summary>Changes when the table changes.</summary>
    public static string Version => WordTable.ReadDefault(File);

    /// <summary>Words that deny what follows them.</summary>
    public IReadOnlySet<string> Before => _before;

    /// <summary>Words that may stand between.</summary>
    public IReadOnlySet<string> Between => _between;

    /// <summary>Words that deny what they follow.</summary>
    public IReadOnlySet<string> After => _after;

    /// <summary>Those of some languages; null: of all.</summary>
    public static Negations For(IReadOnlyList<string>? languages) => new(languages);

    /// <summary>True for a word that denies.</summary>
    public bool Is(string word) => _before.Contains(word) || _after.Contains(word);

    /// <summary>True where the words from one place up to another are denied by those around them.</summary>
    public bool Deny(IReadOnlyList<string> words, int from, int to)
    {
        int at = from - 1;
        while (at >= 0 && from - at <= MostBetween && _between.Contains(words[at]))
        {
            at--;
        }

        return (at >= 0 && _before.Contains(words[at])) || (to < words.Count && _after.Contains(words[to]));
    }
}
