using PartsSignal.Reports.Components;

namespace PartsSignal.Reports.Phone;

/// <summary>The cautions of an answer as sentences.</summary>
internal static class CautionSentences
{
    private const string Heading = "Before you open it: ";

    /// <summary>Each sentence once, in order: steps share much of their cautions.</summary>
    public static IReadOnlyList<string> Of(IReadOnlyList<string> cautions) => [.. cautions.SelectMany(Sentences).Select(WithoutHeading).Distinct(StringComparer.Ordinal)];

    // The list stands under that heading already.
    private static string WithoutHeading(string sentence)
    {
        string rest = sentence.StartsWith(Heading, StringComparison.Ordinal) ? Format.Capital(sentence[Heading.Length..]) : sentence;
        return rest.EndsWith('.') ? rest : rest + ".";
    }

    // A sentence ends with a full stop before a capital letter; "230 V." within one does not.
    private static IEnumerable<string> Sentences(string text)
    {
        int start = 0;
        for (int i = 0; i + 2 < text.Length; i++)
        {
            if (text[i] == '.' && text[i + 1] == ' ' && char.IsUpper(text[i + 2]))
            {
                yield return text[start..(i + 1)];
                start = i + 2;
            }
        }

        yield return text[start..];
    }
}
