namespace PartsSignal.Pipeline.Privacy;

/// <summary>Tells the languages of texts by their articles, prepositions and words for appliances.</summary>
internal sealed class LanguageVote
{
    private const int LeastShare = 10;
    private static readonly HashSet<ulong>[] Telling = [.. PersonalWords.Languages.Select(l => PersonalWords.Telling[l])];
    private readonly int[] _votes = new int[Telling.Length];

    /// <summary>The language with most words and those with at least a tenth of them; English where nothing tells.</summary>
    public IReadOnlyList<string> Languages
    {
        get
        {
            int most = _votes.Max();
            return most == 0 ? ["en"] : [.. PersonalWords.Languages.Where((_, l) => _votes[l] * LeastShare >= most)];
        }
    }

    /// <summary>Counts a word.</summary>
    /// <param name="word">Hash of its folded form.</param>
    public void Add(ulong word)
    {
        for (int l = 0; l < Telling.Length; l++)
        {
            _votes[l] += Telling[l].Contains(word) ? 1 : 0;
        }
    }
}
