using System.Collections.Concurrent;
using PartsSignal.Analysis.Vocabulary;

namespace PartsSignal.Pipeline.Words;

/// <summary>
/// Tells the kind of a complaint from its words. The complaint named first counts; of phrases that begin at the same
/// word the one with more words, then the earlier in the table. What is denied does not count. Only where no phrase is
/// written right are misspellings tried. A displayed code counts only when nothing else is said.
/// </summary>
internal sealed class ComplaintWordTable
{
    private const string CodeKind = "error_code";
    private const int MaxCached = 200_000;
    private readonly KnownWords _known;
    private readonly Predicate<string>? _isWord;
    private readonly Negations _negations;
    private readonly IReadOnlyList<KeywordRule> _rules;
    private readonly Dictionary<int, List<Phrase>> _byFirst;
    private readonly HashSet<string> _kinds;
    private readonly BoundedCache<(string?, string), string> _cache = new(MaxCached);
    private readonly ConcurrentDictionary<string, ComplaintWordTable> _byLanguage = new(StringComparer.Ordinal);

    /// <summary>Prepares a table.</summary>
    /// <param name="phrases">Its phrases.</param>
    /// <param name="languages">Languages of its words, or null for all.</param>
    /// <param name="isWord">True for a word, folded, that is no misspelling of another; null: everyday words only.</param>
    public ComplaintWordTable(IEnumerable<KeywordRule> phrases, IReadOnlyList<string>? languages = null, Predicate<string>? isWord = null)
    {
        _rules = [.. phrases];
        (_known, _isWord) = (new KnownWords(), isWord);
        _negations = Negations.For(languages);
        _kinds = [.. _rules.Select(p => p.Meaning)];
        _byFirst = _rules
            .Where(p => languages is null || p.IsIn(languages))
            .OrderByDescending(p => p.Stems.Count)
            .ThenBy(p => p.Order)
            .Select((p, place) => new Phrase([.. p.Stems.Select(_known.Id)], p, p.Stems.Any(_negations.Is), place))
            .GroupBy(p => p.Ids[0])
            .ToDictionary(g => g.Key, g => g.ToList());
    }

    // All but what depends on the words of a file is shared.
    private ComplaintWordTable(ComplaintWordTable like, Predicate<string> isWord)
    {
        (_known, _negations, _rules, _byFirst, _kinds) = (like._known, like._negations, like._rules, like._byFirst, like._kinds);
        _isWord = isWord;
    }

    /// <summary>The same with the words of some languages only.</summary>
    public ComplaintWordTable For(IReadOnlyList<string> languages) =>
        _byLanguage.GetOrAdd(string.Join(' ', languages), _ => new ComplaintWordTable(_rules, languages));

    /// <summary>The same for a file: with the words of its languages, and none of its own words taken for a misspelling.</summary>
    public ComplaintWordTable For(IReadOnlyList<string> languages, Predicate<string> isWord) => new(For(languages), isWord);

    /// <summary>The same with further phrases, which come last.</summary>
    public ComplaintWordTable With(IReadOnlyList<KeywordRule> phrases) => phrases.Count == 0 ? this : new([.. _rules, .. phrases.Select((p, i) => p with { Order = _rules.Count + i })]);

    /// <summary>True for the exact name of a kind of the table, such as <c>no_ignition</c>.</summary>
    public bool IsKind(string name) => _kinds.Contains(name);

    /// <summary>True for a word that the table knows, even misspelt.</summary>
    /// <param name="word">A word in small letters.</param>
    public bool Reads(string word) => _known.Match(word, _isWord) is { } match && (match.Exact.Length > 0 || match.Close.Length > 0);

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
        List<string> typed = Tokenizer.Folded(text);
        WordMatch[] words = [.. typed.Select(w => _known.Match(w, _isWord))];
        if (words.Length == 0)
        {
            return Need.NoComplaint;
        }

        string? right = First(words, at => BestAt(typed, words, at, type, tolerant: false));
        string? found = right is null or CodeKind ? First(words, at => BestAt(typed, words, at, type, tolerant: true)) ?? right : right;
        return found ?? Need.OtherComplaint;
    }

    private static string? First(WordMatch[] words, Func<int, KeywordRule?> phraseAt)
    {
        string? code = null;
        for (int at = 0; at < words.Length; at++)
        {
            KeywordRule? phrase = phraseAt(at);
            string? meaning = phrase?.Meaning;
            if (meaning == Need.OtherComplaint)
            {
                // A phrase that hides a word of another kind: "dead battery" is not "dead".
                at += phrase!.Stems.Count - 1;
                continue;
            }

            if (meaning is not (null or CodeKind))
            {
                return meaning;
            }

            code ??= meaning;
        }

        return code;
    }

    private KeywordRule? BestAt(List<string> typed, WordMatch[] words, int at, string? type, bool tolerant)
    {
        Phrase? best = BestOf(words[at].Exact, typed, words, at, type, tolerant, null);
        if (tolerant)
        {
            best = BestOf(words[at].Close, typed, words, at, type, tolerant, best);
            best = BestOf(words[at].Near, typed, words, at, type, tolerant, best);
        }

        return best?.Rule;
    }

    // The phrases that begin with a word are in the order of preference.
    private Phrase? BestOf(int[] firsts, List<string> typed, WordMatch[] words, int at, string? type, bool tolerant, Phrase? best)
    {
        foreach (int first in firsts)
        {
            foreach (Phrase phrase in _byFirst.GetValueOrDefault(first) ?? [])
            {
                if (best is not null && best.Place < phrase.Place)
                {
                    break;
                }

                if (phrase.Rule.Holds(type) && Matches(words, at, phrase.Ids, tolerant) && (phrase.Denies || !_negations.Deny(typed, at, at + phrase.Ids.Length)))
                {
                    best = phrase;
                    break;
                }
            }
        }

        return best;
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

    /// <summary>A phrase of the table.</summary>
    /// <param name="Ids">Numbers of its words.</param>
    /// <param name="Rule">What it means.</param>
    /// <param name="Denies">True where it holds a word that denies.</param>
    /// <param name="Place">Its place in the order of preference.</param>
    private sealed record Phrase(int[] Ids, KeywordRule Rule, bool Denies, int Place);
}
