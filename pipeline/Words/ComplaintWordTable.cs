using PartsSignal.Analysis.Vocabulary;

namespace PartsSignal.Pipeline.Words;

/// <summary>
/// Tells the kind of a complaint from its words. The complaint named first counts; of phrases that begin at the same
/// word the one with more words, then the earlier in the table. Only where no phrase is written right are misspellings
/// tried. A displayed code counts only when nothing else is said.
/// </summary>
internal sealed class ComplaintWordTable
{
    private const string CodeKind = "error_code";
    private const int MaxCached = 200_000;
    private readonly KnownWords _known = new();
    private readonly List<(int[] Ids, KeywordRule Phrase)> _phrases = [];
    private readonly Dictionary<int, List<(int[] Ids, KeywordRule Phrase)>> _byFirst;
    private readonly HashSet<string> _kinds;
    private readonly BoundedCache<(string?, string), string> _cache = new(MaxCached);

    /// <summary>Prepares a table.</summary>
    public ComplaintWordTable(IEnumerable<KeywordRule> phrases)
    {
        _phrases.AddRange(phrases
            .OrderByDescending(p => p.Stems.Count)
            .ThenBy(p => p.Order)
            .Select(p => (p.Stems.Select(_known.Id).ToArray(), p)));
        _kinds = [.. _phrases.Select(p => p.Phrase.Meaning)];
        _byFirst = _phrases.GroupBy(p => p.Ids[0]).ToDictionary(g => g.Key, g => g.ToList());
    }

    /// <summary>True for the exact name of a kind of the table, such as <c>no_ignition</c>.</summary>
    public bool IsKind(string name) => _kinds.Contains(name);

    /// <summary>True for a word that the table knows, even misspelt.</summary>
    /// <param name="word">A word in small letters.</param>
    public bool Reads(string word) => _known.Match(word) is { } match && (match.Exact.Length > 0 || match.Close.Length > 0);

    /// <summary>The kind: <c>none</c> where nothing is typed, <c>other</c> where no phrase matches.</summary>
    /// <param name="text">The complaint.</param>
    /// <param name="applianceType">Limits the phrases, or null for all.</param>
    public string Kind(string? text, string? applianceType)
    {
        if (string.IsNullOrWhiteSpace(text))
        {
            return Need.NoComplaint;
        }

        return _cache.TryGet((applianceType, text), out string? known) ? known : _cache.Keep((applianceType, text), Find(text, applianceType));
    }

    private string Find(string text, string? type)
    {
        WordMatch[] words = [.. Tokenizer.Split(text).Select(_known.Match)];
        if (words.Length == 0)
        {
            return Need.NoComplaint;
        }

        string? right = First(words, at => RightAt(words, at, type));
        string? found = right is null or CodeKind ? First(words, at => LongestAt(_phrases, words, at, type, tolerant: true)) ?? right : right;
        return found ?? Need.OtherComplaint;
    }

    private static string? First(WordMatch[] words, Func<int, KeywordRule?> phraseAt)
    {
        string? code = null;
        for (int at = 0; at < words.Length; at++)
        {
            string? meaning = phraseAt(at)?.Meaning;
            if (meaning is not (null or CodeKind))
            {
                return meaning;
            }

            code ??= meaning;
        }

        return code;
    }

    private KeywordRule? RightAt(WordMatch[] words, int at, string? type)
    {
        KeywordRule? best = null;
        foreach (int first in words[at].Exact)
        {
            if (_byFirst.TryGetValue(first, out List<(int[] Ids, KeywordRule Phrase)>? list)
                && LongestAt(list, words, at, type, tolerant: false) is { } phrase
                && (best is null || phrase.Stems.Count > best.Stems.Count || (phrase.Stems.Count == best.Stems.Count && phrase.Order < best.Order)))
            {
                best = phrase;
            }
        }

        return best;
    }

    // The list is in the order of preference.
    private static KeywordRule? LongestAt(List<(int[] Ids, KeywordRule Phrase)> phrases, WordMatch[] words, int at, string? type, bool tolerant)
    {
        foreach ((int[] ids, KeywordRule phrase) in phrases)
        {
            if (phrase.Holds(type) && Matches(words, at, ids, tolerant))
            {
                return phrase;
            }
        }

        return null;
    }

    // A word that only fits near needs another one of its phrase to be right.
    private static bool Matches(WordMatch[] words, int at, int[] ids, bool tolerant)
    {
        if (at + ids.Length > words.Length)
        {
            return false;
        }

        int right = 0;
        int near = 0;
        for (int i = 0; i < ids.Length; i++)
        {
            WordMatch word = words[at + i];
            if (Array.IndexOf(word.Exact, ids[i]) >= 0)
            {
                right++;
            }
            else if (!tolerant || (Array.IndexOf(word.Close, ids[i]) < 0 && (Array.IndexOf(word.Near, ids[i]) < 0 || ++near > 1)))
            {
                return false;
            }
        }

        return near == 0 || right > 0;
    }
}
