using System.Globalization;

namespace PartsSignal.Pipeline.Words;

/// <summary>A frequent phrase of complaints that no table reads.</summary>
/// <param name="Kind">The complaint kind that it becomes: its words, <c>dispenser_no_water</c>.</param>
/// <param name="Words">The words, in their order.</param>
/// <param name="Calls">Calls that say it.</param>
internal sealed record OwnPhrase(string Kind, string Words, long Calls);

/// <summary>
/// Finds what a shop's customers often say and no table reads: runs of two to four words, of which the first and the last
/// tell something, taken by the number of calls; a longer run is preferred where most calls with the shorter one have it.
/// </summary>
internal static class OwnPhrases
{
    private const int FewestWords = 2;
    private const int MostWords = 4;
    private const int MostKinds = 40;
    private const int LongestText = 60;
    private const int ShortestWord = 3;
    private const int FewestCalls = 8;
    private const double LeastShare = 0.005;

    // Of the calls with a phrase, so many must have the longer one to prefer it.
    private const double LongerShare = 0.6;
    private static readonly HashSet<string> Office = [.. Tokenizer.Folded(WordTable.ReadDefault("office-words.txt"))];

    /// <summary>The phrases, the most frequent first.</summary>
    /// <param name="texts">Unread complaints with the number of calls that say them.</param>
    /// <param name="calls">Calls of the shop with a complaint.</param>
    /// <param name="isFunction">True for a word, folded, that tells nothing by itself: an article, a preposition.</param>
    /// <param name="negations">Words that deny.</param>
    public static IReadOnlyList<OwnPhrase> Find(IReadOnlyList<(string Text, long Times)> texts, long calls, Predicate<string> isFunction, Negations negations)
    {
        long fewest = Math.Max(FewestCalls, (long)Math.Ceiling(calls * LeastShare));
        var runs = texts.Select(t => Runs(t.Text, isFunction, negations)).ToArray();
        var byRun = new Dictionary<string, List<int>>(StringComparer.Ordinal);
        for (int i = 0; i < runs.Length; i++)
        {
            foreach (string run in runs[i])
            {
                (byRun.TryGetValue(run, out List<int>? list) ? list : byRun[run] = []).Add(i);
            }
        }

        // Calls that say a run, which only falls as texts are taken.
        var counts = byRun.ToDictionary(r => r.Key, r => r.Value.Sum(i => texts[i].Times), StringComparer.Ordinal);
        string[] frequent = [.. counts.Where(c => c.Value >= fewest).Select(c => c.Key)];
        var taken = new bool[texts.Count];
        var found = new List<OwnPhrase>();
        while (found.Count < MostKinds && frequent.Length > 0)
        {
            string best = frequent.OrderByDescending(r => counts[r]).ThenByDescending(r => r.Length).ThenBy(r => r, StringComparer.Ordinal).First();
            if (counts[best] < fewest)
            {
                break;
            }

            best = Longer(best, frequent, counts);
            found.Add(new OwnPhrase(best.Replace(' ', '_'), best, counts[best]));
            foreach (int text in byRun[best].Where(t => !taken[t]))
            {
                taken[text] = true;
                foreach (string run in runs[text])
                {
                    counts[run] -= texts[text].Times;
                }
            }
        }

        return found;
    }

    private static string Longer(string best, string[] frequent, Dictionary<string, long> counts)
    {
        long least = (long)Math.Ceiling(counts[best] * LongerShare);
        return frequent
            .Where(r => r.Length > best.Length && counts[r] >= least && (' ' + r + ' ').Contains(' ' + best + ' ', StringComparison.Ordinal))
            .OrderByDescending(r => r.Length)
            .ThenByDescending(r => counts[r])
            .ThenBy(r => r, StringComparer.Ordinal)
            .FirstOrDefault() ?? best;
    }

    private static HashSet<string> Runs(string text, Predicate<string> isFunction, Negations negations)
    {
        var runs = new HashSet<string>(StringComparer.Ordinal);
        foreach (string clause in Clauses(text))
        {
            string[] words = [.. Tokenizer.Folded(clause).Take(LongestText)];
            for (int at = 0; at < words.Length; at++)
            {
                for (int length = FewestWords; length <= MostWords && at + length <= words.Length; length++)
                {
                    // What is denied is told with the word that denies it.
                    if (!negations.Deny(words, at, at + length) && IsPhrase(words.AsSpan(at, length), isFunction, negations))
                    {
                        runs.Add(string.Join(' ', words[at..(at + length)]));
                    }
                }
            }
        }

        return runs;
    }

    // Runs do not go across punctuation, nor across what was cut out.
    private static IEnumerable<string> Clauses(string text)
    {
        int open = 0;
        var clause = new System.Text.StringBuilder();
        foreach (char c in text)
        {
            open += c == '[' ? 1 : c == ']' && open > 0 ? -1 : 0;
            bool ends = c is '[' or ']' || (!char.IsLetterOrDigit(c) && !char.IsWhiteSpace(c) && CharUnicodeInfo.GetUnicodeCategory(c) is not (UnicodeCategory.NonSpacingMark or UnicodeCategory.DashPunctuation) && c is not ('\'' or '\u2019'));
            if (ends)
            {
                yield return clause.ToString();
                clause.Clear();
            }
            else if (open == 0)
            {
                clause.Append(c);
            }
        }

        yield return clause.ToString();
    }

    private static bool IsPhrase(ReadOnlySpan<string> words, Predicate<string> isFunction, Negations negations)
    {
        int telling = 0;
        for (int i = 0; i < words.Length; i++)
        {
            string word = words[i];
            if (word.AsSpan().ContainsAnyInRange('0', '9'))
            {
                return false;
            }

            bool denies = negations.Is(word);
            bool tells = !denies && word.Length >= ShortestWord && !isFunction(word);
            tells = tells && !Office.Contains(word);
            if (!tells && !denies && (i == 0 || i == words.Length - 1))
            {
                return false;
            }

            telling += tells ? 1 : 0;
        }

        // "Not working" tells enough; "new machine" does not.
        return telling >= 2 || (telling == 1 && (negations.Is(words[0]) || negations.Is(words[^1]) || (words.Length > 2 && negations.Is(words[1]))));
    }
}
