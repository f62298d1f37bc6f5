using PartsSignal.Analysis.CrossReference;

namespace PartsSignal.Pipeline.Words;

/// <summary>Suggests names of the tables for words that none of them has.</summary>
internal static class NameSuggestions
{
    /// <summary>Names that share words with a text, those that share most first.</summary>
    /// <param name="text">The text.</param>
    /// <param name="names">Names as stored, such as <c>drain_pump</c>.</param>
    /// <param name="most">How many at most.</param>
    public static IReadOnlyList<string> Find(string text, IReadOnlyList<string> names, int most)
    {
        HashSet<string> words = [.. Tokenizer.Folded(text).Where(w => w.Length > 2)];
        return [.. names
            .Select(n => (Name: n, Words: n.Split('_')))
            .Select(n => (n.Name, Shared: (double)n.Words.Count(words.Contains) / n.Words.Length))
            .Where(n => n.Shared > 0)
            .OrderByDescending(n => n.Shared)
            .ThenBy(n => n.Name, StringComparer.Ordinal)
            .Take(most)
            .Select(n => n.Name)];
    }

    /// <summary>Names written nearly like a text, the nearest first: one letter in four may be wrong, missing or too many.</summary>
    /// <param name="text">The text.</param>
    /// <param name="names">Names as stored.</param>
    /// <param name="most">How many at most.</param>
    public static IReadOnlyList<string> Misspelled(string text, IReadOnlyList<string> names, int most)
    {
        string typed = CompactKey.From(text);
        int allowed = Math.Max(1, typed.Length / 4);
        return [.. names
            .Select(n => (Name: n, Edits: StringDistance.OptimalAlignment(typed, CompactKey.From(n), allowed)))
            .Where(n => n.Edits <= allowed)
            .OrderBy(n => n.Edits)
            .ThenBy(n => n.Name, StringComparer.Ordinal)
            .Take(most)
            .Select(n => n.Name)];
    }
}
