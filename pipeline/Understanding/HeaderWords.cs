using CsvHelper;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Understanding;

/// <summary>What columns are usually headed: field by field, the commoner words first.</summary>
internal sealed record HeaderField(string Kind, string Field, string Content, IReadOnlyList<IReadOnlyList<string>> Phrases)
{
    /// <summary>The shipped table.</summary>
    public static IReadOnlyList<HeaderField> All { get; } = Load();

    /// <summary>How well a header names the field: 1 as a whole, less for some of its words or a misspelling; 0 not at all.</summary>
    public double Match(string header)
    {
        List<string> words = Tokenizer.Split(HeaderText.Spaced(header));
        double best = 0;
        for (int i = 0; i < Phrases.Count; i++)
        {
            // Of two fields with the same words the one for which they are the commoner name comes first.
            best = Math.Max(best, One(words, Phrases[i]) - (0.004 * Math.Min(i, 20)));
        }

        return best;
    }

    private static double One(List<string> words, IReadOnlyList<string> phrase)
    {
        if (words.Count == phrase.Count && words.Zip(phrase).All(p => p.First == p.Second))
        {
            return 1;
        }

        if (words.Count == phrase.Count && words.Zip(phrase).All(p => p.First == p.Second || FuzzyMatch.IsClose(p.First, p.Second)))
        {
            return 0.8;
        }

        return words.Count > phrase.Count && phrase.All(words.Contains) ? 0.45 + (0.3 * phrase.Count / words.Count) : 0;
    }

    private static IReadOnlyList<HeaderField> Load()
    {
        using var csv = CsvReader.FromText(WordTable.ReadDefault("header-words.csv"), new CsvReaderOptions { Separator = ',' });
        var fields = new List<HeaderField>();
        while (csv.Read())
        {
            fields.Add(new HeaderField(
                csv.GetString("kind"),
                csv.GetString("field"),
                csv.GetString("content"),
                [.. csv.GetString("words").Split('|').Select(w => Tokenizer.Split(w))]));
        }

        return fields;
    }
}
