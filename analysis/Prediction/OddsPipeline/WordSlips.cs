using PartsSignal.Analysis.Prediction.LogOdds;

namespace PartsSignal.Analysis.Prediction.OddsPipeline;

/// <summary>
/// Finds the known word that a typed word means by looking up texts alone: each known word is stored under all the forms
/// that a typed word one slip away shares with it. The answers are those of <see cref="WordList.Meant"/>.
/// </summary>
internal static class WordSlips
{
    private const char Any = '?';

    /// <summary>The texts to look up for a typed word: whether it or its stem is known, then one for each possible slip.</summary>
    public static IEnumerable<string> Asked(string typed)
    {
        yield return "=" + typed;
        yield return "^" + ComplaintWords.Stem(typed);
        yield return "-" + typed;
        for (int i = 0; i < typed.Length; i++)
        {
            yield return $"?{typed[..i]}{Any}{typed[(i + 1)..]}";
            yield return $"={typed[..i]}{typed[(i + 1)..]}";
            if (i > 0)
            {
                yield return $"={typed[..(i - 1)]}{typed[i]}{typed[i - 1]}{typed[(i + 1)..]}";
            }
        }
    }

    /// <summary>How many texts are looked up for a typed word.</summary>
    public static int Count(string typed) => 2 + (3 * typed.Length);

    /// <summary>What is stored: per text the most frequent word it may mean, behind its rank.</summary>
    public static SortedDictionary<string, string> Stored(IReadOnlyList<string> words)
    {
        var stored = new SortedDictionary<string, string>(StringComparer.Ordinal);
        for (int rank = 0; rank < words.Count; rank++)
        {
            string word = words[rank], meaning = $"{rank:D6}{word}";
            stored.TryAdd("=" + word, meaning);
            stored.TryAdd("^" + ComplaintWords.Stem(word), meaning);
            for (int i = 0; i < word.Length; i++)
            {
                stored.TryAdd($"?{word[..i]}{Any}{word[(i + 1)..]}", meaning);
                stored.TryAdd($"-{word[..i]}{word[(i + 1)..]}", meaning);
            }
        }

        return stored;
    }

    /// <summary>The stem a typed word means, or null if it means no known word.</summary>
    /// <param name="typed">The word.</param>
    /// <param name="found">What is stored under each text of <see cref="Asked"/>; empty where nothing is.</param>
    public static string? Stem(string typed, ReadOnlySpan<string> found)
    {
        if (found[0].Length > 0 || (typed.Length >= ComplaintWords.StemLength && found[1].Length > 0))
        {
            return ComplaintWords.Stem(typed);
        }

        string? best = null;
        foreach (string meaning in found[2..])
        {
            best = meaning.Length > 0 && (best is null || string.CompareOrdinal(meaning, best) < 0) ? meaning : best;
        }

        return best is null ? null : ComplaintWords.Stem(best[6..]);
    }
}
