using PartsSignal.Analysis.PartPrediction.Calls;

namespace PartsSignal.Analysis.PartPrediction.LogOdds;

/// <summary>Words of a complaint, cut to stems so that "draining" and "drains" meet.</summary>
public static class ComplaintWords
{
    /// <summary>Letters a stem keeps.</summary>
    public const int StemLength = 5;

    /// <summary>Distinct stems of a text, in order of appearance: lower case, letters only, three letters or more.</summary>
    public static IReadOnlyList<string> Stems(string? text)
    {
        var stems = new List<string>();
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
                Add(stems, text.AsSpan(start, i - start));
                start = -1;
            }
        }

        return stems;
    }

    /// <summary>Stems worth a weight of their own: the most frequent ones, ties in ordinal order.</summary>
    /// <param name="calls">Closed jobs.</param>
    /// <param name="least">Fewest jobs a stem must appear in.</param>
    /// <param name="most">Most stems kept.</param>
    public static IReadOnlySet<string> Vocabulary(IReadOnlyList<ClosedCall> calls, int least, int most) =>
        calls.SelectMany(c => Stems(c.Call.ComplaintText))
            .CountBy(s => s, StringComparer.Ordinal)
            .Where(s => s.Value >= least)
            .OrderByDescending(s => s.Value).ThenBy(s => s.Key, StringComparer.Ordinal)
            .Take(most).Select(s => s.Key).ToHashSet(StringComparer.Ordinal);

    private static void Add(List<string> stems, ReadOnlySpan<char> word)
    {
        if (word.Length >= 3)
        {
            string stem = word[..Math.Min(word.Length, StemLength)].ToString().ToLowerInvariant();
            if (!stems.Contains(stem))
            {
                stems.Add(stem);
            }
        }
    }
}
