using System.Text;
using PartsSignal.Pipeline.Cleaning;

namespace PartsSignal.Pipeline.Understanding;

/// <summary>Takes headers apart into plain words: lower case, without accents, camel case divided.</summary>
internal static class PlainHeader
{
    /// <summary>The words; <c>#</c> and <c>Nº</c> become <c>no</c>.</summary>
    public static IReadOnlyList<string> Words(string header)
    {
        header = header.Replace('\u00ba', 'o').Replace('\u00b0', 'o').Replace("#", " no ", StringComparison.Ordinal);
        var words = new List<string>();
        var word = new StringBuilder();
        for (int i = 0; i < header.Length; i++)
        {
            char c = header[i];
            bool starts = i > 0 && char.IsUpper(c) && (char.IsLower(header[i - 1]) || (i + 1 < header.Length && char.IsUpper(header[i - 1]) && char.IsLower(header[i + 1])));
            if (starts || !char.IsLetterOrDigit(c) || (word.Length > 0 && char.IsDigit(c) != char.IsDigit(word[^1])))
            {
                Flush(word, words);
            }

            if (char.IsLetterOrDigit(c))
            {
                word.Append(PlainLetter.Of(char.ToLowerInvariant(c)));
            }
        }

        Flush(word, words);
        return words;
    }

    /// <summary>A header as headers are compared: its words, without case, marks and accents.</summary>
    public static string Key(string header) => string.Join(' ', Words(header));

    private static void Flush(StringBuilder word, List<string> words)
    {
        if (word.Length > 0)
        {
            words.Add(word.ToString());
            word.Clear();
        }
    }
}
