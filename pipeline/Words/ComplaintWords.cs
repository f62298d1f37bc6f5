using PartsSignal.Analysis.Vocabulary;

namespace PartsSignal.Pipeline.Words;

/// <summary>
/// Tells the kind of a complaint from its words. The complaint named first counts; of phrases that begin at the same
/// word the one with more words, then the earlier in the table. A displayed code counts only when nothing else is said.
/// </summary>
public sealed class ComplaintWords
{
    private const string CodeKind = "error_code";
    private const int MaxCached = 200_000;
    private readonly Vocabulary _vocabulary = new();
    private readonly Dictionary<int, List<(int[] Ids, Phrase Phrase)>> _byFirst = [];
    private readonly Dictionary<(string?, string), string> _cache = [];

    /// <summary>Prepares a table.</summary>
    public ComplaintWords(IEnumerable<Phrase> phrases)
    {
        foreach (Phrase phrase in phrases)
        {
            int[] ids = [.. phrase.Stems.Select(_vocabulary.Id)];
            if (!_byFirst.TryGetValue(ids[0], out List<(int[], Phrase)>? list))
            {
                _byFirst.Add(ids[0], list = []);
            }

            list.Add((ids, phrase));
        }
    }

    /// <summary>The kind: <c>none</c> where nothing is typed, <c>other</c> where no phrase matches.</summary>
    /// <param name="text">The complaint.</param>
    /// <param name="applianceType">Limits the phrases; null: all.</param>
    public string Kind(string? text, string? applianceType)
    {
        if (string.IsNullOrWhiteSpace(text))
        {
            return Need.NoComplaint;
        }

        if (_cache.TryGetValue((applianceType, text), out string? known))
        {
            return known;
        }

        string kind = Find(text, applianceType);
        if (_cache.Count < MaxCached)
        {
            _cache.Add((applianceType, text), kind);
        }

        return kind;
    }

    private string Find(string text, string? type)
    {
        List<string> words = PlainWords.Split(text);
        if (words.Count == 0)
        {
            return Need.NoComplaint;
        }

        int[][] ids = [.. words.Select(_vocabulary.Match)];
        string? code = null;
        for (int at = 0; at < ids.Length; at++)
        {
            if (LongestAt(ids, at, type) is { } phrase)
            {
                if (phrase.Meaning != CodeKind)
                {
                    return phrase.Meaning;
                }

                code = CodeKind;
            }
        }

        return code ?? Need.OtherComplaint;
    }

    private Phrase? LongestAt(int[][] ids, int at, string? type)
    {
        Phrase? best = null;
        foreach (int first in ids[at])
        {
            if (!_byFirst.TryGetValue(first, out List<(int[] Ids, Phrase Phrase)>? list))
            {
                continue;
            }

            foreach ((int[] wanted, Phrase phrase) in list)
            {
                if (phrase.Holds(type) && MatchesAt(ids, at, wanted) && Beats(phrase, best))
                {
                    best = phrase;
                }
            }
        }

        return best;
    }

    private static bool Beats(Phrase phrase, Phrase? best) =>
        best is null || phrase.Stems.Count > best.Stems.Count || (phrase.Stems.Count == best.Stems.Count && phrase.Order < best.Order);

    private static bool MatchesAt(int[][] ids, int at, int[] wanted)
    {
        if (at + wanted.Length > ids.Length)
        {
            return false;
        }

        for (int i = 0; i < wanted.Length; i++)
        {
            if (Array.IndexOf(ids[at + i], wanted[i]) < 0)
            {
                return false;
            }
        }

        return true;
    }
}
