using System.Globalization;

namespace PartsSignal.Pipeline.Cleaning;

/// <summary>Reads several parts from one cell: <c>40-118 x2; 7731</c>, <c>2 x 40-118 + 7731</c>, <c>drum roller / clamp</c>. Prices are left out.</summary>
internal static class PartsListText
{
    /// <summary>Most parts of one cell.</summary>
    public const int MaxParts = 40;

    private const int MostCountDigits = 2;

    /// <summary>The parts with their counts, in order. Empty entries are left out; an entry without a count counts one.</summary>
    /// <param name="cell">The cell.</param>
    /// <param name="countsLead">True where <c>1x40-118</c> or <c>1 drum roller</c> is a count with its part, which the cell alone cannot tell.</param>
    public static IReadOnlyList<(string Part, int Quantity)> Read(ReadOnlySpan<char> cell, bool countsLead = false)
    {
        var parts = new List<(string, int)>();
        foreach (string entry in Entries(PricesInText.Without(cell)))
        {
            // Only a slash or an ampersand between blanks joins two parts, and not a number and its name.
            string[] each = NumberAndNameText.TryRead(entry, out _, out _) ? [entry] : entry.Split([" / ", " & "], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
            parts.AddRange(each.Where(e => e.Length > 0).Take(MaxParts - parts.Count).Select(e => One(e, countsLead)));
        }

        return parts;
    }

    /// <summary>
    /// Whether a cell begins with what may be a count: any number glued to its part, or a 1 before a word. A file where most
    /// cells do so has counts there. A shop's own two-digit part numbers differ from cell to cell; a count is mostly 1.
    /// </summary>
    public static bool MayLeadWithCount(ReadOnlySpan<char> cell)
    {
        ReadOnlySpan<char> text = cell.Trim();
        return CountEnd(text) is > 0 and var end && (text[end] != ' ' || (Count(text[..end], out int pieces) && pieces == 1));
    }

    // A comma in brackets belongs to the name: WV-22 (inlet valve, double).
    private static List<string> Entries(ReadOnlySpan<char> cell)
    {
        var entries = new List<string>();
        int start = 0, open = 0;
        for (int i = 0; i < cell.Length; i++)
        {
            open = cell[i] switch
            {
                '(' when cell[i..].Contains(')') => open + 1,
                ')' => Math.Max(0, open - 1),
                _ => open,
            };
            if (open == 0 && ";|+\n\r,".Contains(cell[i], StringComparison.Ordinal))
            {
                entries.Add(cell[start..i].Trim().ToString());
                start = i + 1;
            }
        }

        entries.Add(cell[start..].Trim().ToString());
        return entries;
    }

    private static (string Part, int Quantity) One(ReadOnlySpan<char> entry, bool countsLead)
    {
        if (countsLead && CountEnd(entry) is > 0 and var end && Count(entry[..end], out int pieces))
        {
            return (entry[(end + 1)..].Trim().ToString(), pieces);
        }

        int x = entry.LastIndexOfAny("xX*\u00d7");
        if (x > 0 && entry[x - 1] == ' ' && Count(entry[(x + 1)..], out int behind))
        {
            return (entry[..x].TrimEnd().ToString(), behind);
        }

        x = entry.IndexOfAny("xX*\u00d7");
        if (x > 0 && x + 1 < entry.Length && (entry[x + 1] == ' ' || entry[x - 1] == ' ') && Count(entry[..x], out int before))
        {
            return (entry[(x + 1)..].Trim().ToString(), before);
        }

        int bracket = entry.LastIndexOf('(');
        return bracket > 0 && entry[^1] == ')' && Count(entry[(bracket + 1)..^1].TrimStart("xX* "), out int inside)
            ? (entry[..bracket].TrimEnd().ToString(), inside)
            : (entry.ToString(), 1);
    }

    // Where a leading count ends: before an x that its part follows, or before a blank and a word.
    private static int CountEnd(ReadOnlySpan<char> entry)
    {
        int at = entry.IndexOfAnyExceptInRange('0', '9');
        if (at is <= 0 or > MostCountDigits || at + 1 >= entry.Length)
        {
            return 0;
        }

        bool isGlued = entry[at] is 'x' or 'X' or '\u00d7' && entry[at + 1] != ' ';
        bool isBeforeWord = entry[at] == ' ' && char.IsLetter(entry[at + 1]) && !(at + 2 < entry.Length && entry[at + 1] is 'x' or 'X' && entry[at + 2] == ' ');
        return isGlued || isBeforeWord ? at : 0;
    }

    private static bool Count(ReadOnlySpan<char> text, out int count) =>
        int.TryParse(text.Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out count) && count is >= 1 and <= 999;
}
