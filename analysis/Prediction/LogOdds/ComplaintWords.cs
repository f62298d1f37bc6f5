namespace PartsSignal.Analysis.Prediction.LogOdds;

/// <summary>Words of a complaint, and their stems, so that "draining" and "drains" meet.</summary>
internal static class ComplaintWords
{
    /// <summary>Letters a stem keeps.</summary>
    public const int StemLength = 5;

    /// <summary>Distinct words of a text, in order of appearance: lower case, letters only, three letters or more.</summary>
    public static IReadOnlyList<string> Split(string? text)
    {
        var words = new List<string>();
        int start = -1;
        for (int i = 0; i <= text?.Length; i++)
        {
            bool letter = i < text.Length && char.IsLetter(text[i]);
            if (letter && start < 0)
            {
                start = i;
            }
            else if (!letter && start >= 0)
            {
                string word = text[start..i].ToLowerInvariant();
                if (word.Length >= 3 && !words.Contains(word))
                {
                    words.Add(word);
                }

                start = -1;
            }
        }

        return words;
    }

    /// <summary>Stem of a word.</summary>
    public static string Stem(string word) => word.Length <= StemLength ? word : word[..StemLength];

    /// <summary>Words worth knowing: the most frequent ones, ties in ordinal order.</summary>
    /// <param name="calls">Closed jobs.</param>
    /// <param name="least">Fewest jobs a word must appear in.</param>
    /// <param name="most">Most words kept.</param>
    public static WordList Vocabulary(IReadOnlyList<ClosedCall> calls, int least, int most) =>
        new([.. calls.SelectMany(c => Split(c.Call.ComplaintText))
            .CountBy(s => s, StringComparer.Ordinal)
            .Where(s => s.Value >= least)
            .OrderByDescending(s => s.Value).ThenBy(s => s.Key, StringComparer.Ordinal)
            .Take(most).Select(s => s.Key)]);
}
