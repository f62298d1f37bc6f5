namespace PartsSignal.Pipeline.Words;

/// <summary>Table words that one typed word can be.</summary>
/// <param name="Exact">It is one of these.</param>
/// <param name="Close">Misspelt, it is one of these, even standing alone.</param>
/// <param name="Near">Misspelt, it is one of these if the words around it are right.</param>
internal sealed record WordMatch(int[] Exact, int[] Close, int[] Near);

/// <summary>
/// All words of a set of phrases, and which of them a typed word can be. A word that the tables or everyday speech know
/// is itself; only a word that neither knows may be a misspelling.
/// </summary>
/// <param name="isWord">True for a word of the language or of the file, folded, which then is no misspelling; null: everyday words only.</param>
internal sealed class KnownWords(Predicate<string>? isWord = null)
{
    private const int MaxCached = 100_000;
    private static readonly HashSet<string> Common = [.. WordTable.ReadDefault("common-words.txt").Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)];

    private static readonly Dictionary<string, string> Short = WordTable.ReadDefault("short-words.csv").Split('\n', StringSplitOptions.RemoveEmptyEntries).Skip(1)
        .Select(l => l.Trim().Split(',')).ToDictionary(l => l[0], l => l[1], StringComparer.Ordinal);

    private readonly List<string> _stems = [];
    private readonly Dictionary<string, int> _ids = new(StringComparer.Ordinal);
    private readonly BoundedCache<string, WordMatch> _cache = new(MaxCached);

    /// <summary>Number of a table word, made when new.</summary>
    public int Id(string stem)
    {
        if (!_ids.TryGetValue(stem, out int id))
        {
            id = _stems.Count;
            _ids.Add(stem, id);
            _stems.Add(stem);
        }

        return id;
    }

    /// <summary>What a typed word can be.</summary>
    public WordMatch Match(string typed) =>
        _cache.TryGet(typed, out WordMatch? known) ? known : _cache.Keep(typed, Find(Short.GetValueOrDefault(typed, typed)));

    private WordMatch Find(string typed)
    {
        int[] exact = Where(s => IsStem(s) ? typed.AsSpan().StartsWith(s.AsSpan(0, s.Length - 1)) : s == typed);
        return exact.Length > 0 || Common.Contains(typed) || isWord?.Invoke(typed) == true || typed.AsSpan().ContainsAnyInRange('0', '9')
            ? new WordMatch(exact, [], [])
            : new WordMatch([], Where(s => IsAny(typed, s, FuzzyMatch.IsClose)), Where(s => IsAny(typed, s, FuzzyMatch.IsNear)));
    }

    private int[] Where(Predicate<string> fits) => [.. Enumerable.Range(0, _stems.Count).Where(i => fits(_stems[i]))];

    private static bool IsStem(string word) => word[^1] == '*';

    // A stem is compared with as much of the typed word as it has letters, give or take one.
    private static bool IsAny(string typed, string known, Func<string, string, bool> fits)
    {
        if (!IsStem(known))
        {
            return fits(typed, known);
        }

        string root = known[..^1];
        for (int length = Math.Max(1, root.Length - 1); length <= Math.Min(typed.Length, root.Length + 1); length++)
        {
            if (fits(typed[..length], root))
            {
                return true;
            }
        }

        return false;
    }
}
