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
internal sealed class KnownWords
{
    private const int MaxCached = 100_000;
    private static readonly HashSet<string> Common = [.. WordTable.ReadDefault("common-words.txt").Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)];

    private static readonly Dictionary<string, string> Short = WordTable.ReadDefault("short-words.csv").Split('\n', StringSplitOptions.RemoveEmptyEntries).Skip(1)
        .Select(l => l.Trim().Split(',')).ToDictionary(l => l[0], l => l[1], StringComparer.Ordinal);

    private readonly List<string> _stems = [];
    private readonly Dictionary<string, int> _ids = new(StringComparer.Ordinal);
    private readonly BoundedCache<string, WordMatch> _right = new(MaxCached);
    private readonly BoundedCache<string, WordMatch> _slips = new(MaxCached);

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
    public WordMatch Match(string typed) => Match(typed, null);

    /// <summary>What a word typed in a file can be.</summary>
    /// <param name="typed">The word.</param>
    /// <param name="isWord">True for a word of the language or of the file, folded, which then is no misspelling; null: everyday words only.</param>
    public WordMatch Match(string typed, Predicate<string>? isWord)
    {
        // What a word is by the tables is the same for all files; only what counts as a misspelling is not.
        string word = Short.GetValueOrDefault(typed, typed);
        WordMatch right = _right.TryGet(word, out WordMatch? known) ? known : _right.Keep(word, new WordMatch(Exact(word), [], []));
        return right.Exact.Length > 0 || Common.Contains(word) || word.AsSpan().ContainsAnyInRange('0', '9') || isWord?.Invoke(word) == true ? right
            : _slips.TryGet(word, out WordMatch? slips) ? slips
            : _slips.Keep(word, new WordMatch([], Like(word, FuzzyMatch.IsClose), Like(word, FuzzyMatch.IsNear)));
    }

    private int[] Exact(string word)
    {
        var found = new List<int>();
        for (int i = 0; i < _stems.Count; i++)
        {
            string stem = _stems[i];
            if (IsStem(stem) ? word.AsSpan().StartsWith(stem.AsSpan(0, stem.Length - 1)) : stem == word)
            {
                found.Add(i);
            }
        }

        return [.. found];
    }

    private int[] Like(string word, Fits fits)
    {
        var found = new List<int>();
        for (int i = 0; i < _stems.Count; i++)
        {
            if (IsAny(word, _stems[i], fits))
            {
                found.Add(i);
            }
        }

        return [.. found];
    }

    private static bool IsStem(string word) => word[^1] == '*';

    // A stem is compared with as much of the typed word as it has letters, give or take one.
    private static bool IsAny(ReadOnlySpan<char> typed, string known, Fits fits)
    {
        if (!IsStem(known))
        {
            return fits(typed, known);
        }

        ReadOnlySpan<char> root = known.AsSpan(0, known.Length - 1);
        for (int length = Math.Max(1, root.Length - 1); length <= Math.Min(typed.Length, root.Length + 1); length++)
        {
            if (fits(typed[..length], root))
            {
                return true;
            }
        }

        return false;
    }

    private delegate bool Fits(ReadOnlySpan<char> typed, ReadOnlySpan<char> known);
}
