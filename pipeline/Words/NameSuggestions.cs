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
}
