namespace PartsSignal.Pipeline.Privacy;

/// <summary>
/// Tells the languages of texts by their articles, prepositions, and words for appliances and their faults. Many such words
/// belong to several languages ("to", "motor"), so beside the leading language only words that it does not have count, and
/// they must differ.
/// </summary>
internal sealed class LanguageVote
{
    private const int LeastShare = 10;
    private const int FewestWords = 3;

    // The languages that have a telling word: bit l stands for language l.
    private static readonly Dictionary<ulong, int> Having = PersonalWords.Languages
        .SelectMany((language, l) => PersonalWords.Telling[language].Union(PersonalWords.TradeTelling.GetValueOrDefault(language) ?? []).Select(word => (word, bit: 1 << l)))
        .GroupBy(w => w.word, w => w.bit).ToDictionary(w => w.Key, w => w.Sum());

    private readonly Dictionary<ulong, int> _seen = [];

    /// <summary>
    /// The language with most words, then each with at least a tenth as many words that those before it do not have; in the
    /// order of <see cref="PersonalWords.Languages"/>. English where nothing tells.
    /// </summary>
    public IReadOnlyList<string> Languages
    {
        get
        {
            int most = Enumerable.Range(0, PersonalWords.Languages.Count).Max(l => Own(l, 0).Votes);
            int spoken = 0;
            while (most > 0 && Next(spoken, most) is { } next)
            {
                spoken |= 1 << next;
            }

            return spoken == 0 ? ["en"] : [.. PersonalWords.Languages.Where((_, l) => (spoken >> l & 1) == 1)];
        }
    }

    /// <summary>Counts a word.</summary>
    /// <param name="word">Hash of its folded form.</param>
    /// <param name="times">How often it was seen.</param>
    public void Add(ulong word, int times = 1)
    {
        if (Having.ContainsKey(word))
        {
            System.Runtime.InteropServices.CollectionsMarshal.GetValueRefOrAddDefault(_seen, word, out _) += times;
        }
    }

    // The language with most words of its own beside those that are spoken, or null if none has enough.
    private int? Next(int spoken, int most) => Enumerable.Range(0, PersonalWords.Languages.Count)
        .Where(l => (spoken >> l & 1) == 0)
        .Select(l => (Language: l, Own: Own(l, spoken)))
        .Where(l => l.Own.Votes * LeastShare >= most && (spoken == 0 || l.Own.Words >= FewestWords))
        .OrderByDescending(l => l.Own.Votes).Select(l => (int?)l.Language).FirstOrDefault();

    private (int Votes, int Words) Own(int language, int without)
    {
        (int votes, int words) = (0, 0);
        foreach ((ulong word, int times) in _seen)
        {
            if ((Having[word] >> language & 1) == 1 && (Having[word] & without) == 0)
            {
                (votes, words) = (votes + times, words + 1);
            }
        }

        return (votes, words);
    }
}
