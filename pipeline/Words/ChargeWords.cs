namespace PartsSignal.Pipeline.Words;

/// <summary>
/// Tells a line that charges for work, travel or a fee from one that names a part. Some words say so wherever they begin or
/// end a line: <c>Labor, replace drain pump</c>. Others say so only where nothing else stands beside them: <c>Service</c>
/// is a charge, <c>Service valve</c> a part.
/// </summary>
internal static class ChargeWords
{
    private const int ShortestWord = 3;
    private static readonly string[] And = ["and", "und", "et", "y", "e", "ed", "en", "i", "oraz", "plus", "with", "incl"];
    private static readonly ILookup<string, string> Table = Read();
    private static readonly Dictionary<string, string> Short = Table["short"].Select(p => p.Split('=')).DistinctBy(p => Plain(p[0])).ToDictionary(p => Plain(p[0]), p => Plain(p[1]), StringComparer.Ordinal);
    private static readonly string[][] Edge = Split("edge");
    private static readonly string[][] Whole = [.. Split("whole"), .. Edge];
    private static readonly HashSet<string> Beside = [.. Split("beside").SelectMany(p => p)];

    /// <summary>True where a line names a charge and no part.</summary>
    public static bool IsCharge(string text)
    {
        string[] all = [.. PartPhrase.Parse(text).Head.Select(w => Short.GetValueOrDefault(w, w))];
        string[] words = [.. all.Where(IsTelling)];
        return words.Length > 0 && (Begins(words) || Ends(words, all) || IsAll(words));
    }

    private static bool Begins(string[] words) => Array.Exists(Edge, p => Stands(p, words, 0));

    // "Pump and labor" names a part.
    private static bool Ends(string[] words, string[] all) =>
        Array.Find(Edge, p => Stands(p, words, words.Length - p.Length)) is { } phrase
        && (phrase.Length == words.Length || !And.Contains(all.ElementAtOrDefault(Array.FindLastIndex(all, w => Is(phrase[0], w)) - 1)));

    private static bool IsAll(string[] words)
    {
        bool charges = false;
        for (int at = 0; at < words.Length;)
        {
            int length = Whole.Where(p => Stands(p, words, at)).Select(p => p.Length).DefaultIfEmpty().Max();
            if (length == 0 && !Beside.Contains(words[at]))
            {
                return false;
            }

            charges |= length > 0;
            at += Math.Max(1, length);
        }

        return charges;
    }

    private static bool Stands(string[] phrase, string[] words, int at)
    {
        bool stands = at >= 0 && at + phrase.Length <= words.Length;
        for (int i = 0; stands && i < phrase.Length; i++)
        {
            stands = Is(phrase[i], words[at + i]);
        }

        return stands;
    }

    private static bool Is(string wanted, string word) => wanted[0] == '*' ? word.Length > wanted.Length + 1 && word.EndsWith(wanted[1..], StringComparison.Ordinal) : wanted == word;

    private static bool IsTelling(string word) => word.Length >= ShortestWord && !word.AsSpan().ContainsAnyInRange('0', '9');

    private static string Plain(string word) => Tokenizer.Folded(word)[0];

    private static string[][] Split(string place) => [.. Table[place].Select(p => Tokenizer.Folded(p, keepStars: true).Where(IsTelling).ToArray()).Where(p => p.Length > 0)];

    private static ILookup<string, string> Read() => WordTable.ReadDefault("charge-words.csv").Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).Skip(1)
        .Select(l => l.Split(','))
        .SelectMany(c => c[2].Split('|').Select(p => (Place: c[0], Phrase: p)))
        .ToLookup(p => p.Place, p => p.Phrase, StringComparer.Ordinal);
}
