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

    /// <summary>The language with most words, and those with at least a tenth as many that it does not have; English where nothing tells.</summary>
    public IReadOnlyList<string> Languages
    {
        get
        {
            int[] votes = [.. PersonalWords.Languages.Select((_, l) => Own(l, 0).Sum(w => w.Value))];
            int most = votes.Max(), leader = Array.IndexOf(votes, most);
            return most == 0 ? ["en"] : [.. PersonalWords.Languages.Where((_, l) => l == leader || IsBeside(l, 1 << leader, most))];
        }
    }

    /// <summary>Counts a word.</summary>
    /// <param name="word">Hash of its folded form.</param>
    public void Add(ulong word)
    {
        if (Having.ContainsKey(word))
        {
            System.Runtime.InteropServices.CollectionsMarshal.GetValueRefOrAddDefault(_seen, word, out _)++;
        }
    }

    private bool IsBeside(int language, int leader, int most)
    {
        KeyValuePair<ulong, int>[] own = [.. Own(language, leader)];
        return own.Length >= FewestWords && own.Sum(w => w.Value) * LeastShare >= most;
    }

    private IEnumerable<KeyValuePair<ulong, int>> Own(int language, int without) =>
        _seen.Where(w => (Having[w.Key] >> language & 1) == 1 && (Having[w.Key] & without) == 0);
}
