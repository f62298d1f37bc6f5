namespace PartsSignal.Pipeline.Words;

/// <summary>
/// All words of a set of phrases, and which of them a typed word can be. A word that the tables know is itself; only a
/// word they do not know may be a misspelling, and then of its closest words only.
/// </summary>
internal sealed class Vocabulary
{
    private const int MaxCached = 100_000;
    private readonly List<string> _stems = [];
    private readonly Dictionary<string, int> _ids = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int[]> _cache = new(StringComparer.Ordinal);

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

    /// <summary>Numbers of the table words that a typed word can be, ascending; empty: none.</summary>
    public int[] Match(string typed)
    {
        if (_cache.TryGetValue(typed, out int[]? known))
        {
            return known;
        }

        int[] found = Find(typed);
        if (_cache.Count < MaxCached)
        {
            _cache.Add(typed, found);
        }

        return found;
    }

    private int[] Find(string typed)
    {
        var exact = new List<int>();
        for (int i = 0; i < _stems.Count; i++)
        {
            string stem = _stems[i];
            if (stem[^1] == '*' ? typed.AsSpan().StartsWith(stem.AsSpan(0, stem.Length - 1)) : stem == typed)
            {
                exact.Add(i);
            }
        }

        return exact.Count > 0 || typed.AsSpan().ContainsAnyInRange('0', '9') ? [.. exact] : Close(typed);
    }

    private int[] Close(string typed)
    {
        int best = 3;
        var close = new List<int>();
        for (int i = 0; i < _stems.Count; i++)
        {
            int slips = Slips(typed, _stems[i]);
            if (slips < best)
            {
                best = slips;
                close.Clear();
            }

            if (slips == best && slips < 3)
            {
                close.Add(i);
            }
        }

        return [.. close];
    }

    // A stem is compared with as much of the typed word as it has letters, give or take one.
    private static int Slips(string typed, string stem)
    {
        if (stem[^1] != '*')
        {
            return Spelling.IsClose(typed, stem) ? Spelling.Slips(typed, stem, 2) : 3;
        }

        string root = stem[..^1];
        int best = 3;
        for (int length = Math.Max(1, root.Length - 1); length <= Math.Min(typed.Length, root.Length + 1); length++)
        {
            string start = typed[..length];
            best = Spelling.IsClose(start, root) ? Math.Min(best, Spelling.Slips(start, root, 2)) : best;
        }

        return best;
    }
}
