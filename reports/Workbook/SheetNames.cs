using System.Globalization;

namespace PartsSignal.Reports.Workbook;

/// <summary>Names a workbook accepts: 1 to 31 characters, none of <c>[ ] : * ? / \</c>, and no name twice.</summary>
internal static class SheetNames
{
    private const int Longest = 31;

    // Words that no name ends with.
    private static readonly string[] Small = ["a", "an", "and", "by", "for", "from", "in", "of", "on", "or", "the", "to", "with"];

    /// <summary>The names cleaned, and told apart where they are the same.</summary>
    public static IReadOnlyList<string> Unique(IReadOnlyList<string> wanted)
    {
        var taken = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        var names = new List<string>();
        foreach (string text in wanted)
        {
            string clean = Clean(text), name = clean;
            for (int n = 2; !taken.Add(name); n++)
            {
                string tail = " " + n.ToString(CultureInfo.InvariantCulture);
                name = clean[..Math.Min(clean.Length, Longest - tail.Length)] + tail;
            }

            names.Add(name);
        }

        return names;
    }

    /// <summary>A title as a sheet's name: as it is where that is short enough, else its part before a comma, else its first words.</summary>
    public static string Short(string title)
    {
        if (title.Length <= Longest)
        {
            return title;
        }

        int comma = title.IndexOf(", ", StringComparison.Ordinal);
        if (comma is > 0 and <= Longest)
        {
            return title[..comma];
        }

        var words = title[..(Longest + 1)].Split(' ').SkipLast(1).ToList();
        while (words.Count > 1 && Small.Contains(words[^1], StringComparer.OrdinalIgnoreCase))
        {
            words.RemoveAt(words.Count - 1);
        }

        return words.Count == 0 ? title[..Longest] : string.Join(' ', words);
    }

    public static string Clean(string text)
    {
        string clean = new([.. text.Select(c => "[]:*?/\\'".Contains(c, StringComparison.Ordinal) || char.IsControl(c) ? ' ' : c).Take(Longest)]);
        return clean.Trim() is { Length: > 0 } name ? name : "table";
    }
}
