using System.Globalization;

namespace PartsSignal.Reports.Workbook;

/// <summary>Names a workbook accepts: 1 to 31 characters, none of <c>[ ] : * ? / \</c>, and no name twice.</summary>
internal static class SheetNames
{
    private const int Longest = 31;

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

    public static string Clean(string text)
    {
        string clean = new([.. text.Select(c => "[]:*?/\\'".Contains(c, StringComparison.Ordinal) || char.IsControl(c) ? ' ' : c).Take(Longest)]);
        return clean.Trim() is { Length: > 0 } name ? name : "table";
    }
}
