using System.Text.RegularExpressions;
using PartsSignal.Pipeline.Reading;

namespace PartsSignal.Pipeline.Staging;

/// <summary>
/// Tells what may stand among or below the data and is none: a total, a note, a repeated header. A row is none of them
/// because it is short, or because a word like total stands in it.
/// </summary>
internal static partial class FooterRule
{
    private const int FewestColumns = 3;

    /// <summary>
    /// True for a row that sums up others: its first filled cell is a word like total, and it lacks what every row has.
    /// Where that is not known, it lacks half of the cells.
    /// </summary>
    public static bool IsTotal(RowCells row, int width, RowHabits habits)
    {
        int first = FirstFilled(row);
        return width >= FewestColumns && first >= 0 && MayBeWord(row[first].Trim())
            && (habits.LacksUsual(row) ?? CountFilled(row) * 2 <= Math.Max(width, 4))
            && IsTotalWord(row[first]);
    }

    /// <summary>True for a row that begins with a word like total, whatever else it holds.</summary>
    public static bool BeginsWithTotal(RowCells row, int width)
    {
        int first = FirstFilled(row);
        return width >= FewestColumns && first >= 0 && IsTotalWord(row[first]);
    }

    /// <summary>True for a cell that says total and nothing else, but perhaps of what or how many.</summary>
    public static bool IsTotalWord(ReadOnlySpan<char> cell) => Total().IsMatch(cell.Trim());

    /// <summary>
    /// True for a line of text: one filled cell that reads as a sentence where its column holds none, a rule, or a line that
    /// its commas cut into fewer cells than any row has.
    /// </summary>
    public static bool IsNote(RowCells row, int width, RowHabits habits)
    {
        int first = FirstFilled(row), filled = CountFilled(row);
        bool few = width >= FewestColumns && (filled == 1 || (width >= 6 && row.Count * 4 <= width + 2));
        return few && first >= 0 && (EndWords().IsMatch(row[first].Trim())
            || (filled == 1 && !HasLetterOrDigit(row[first]))
            || (CellShapes.Of(row[first]) == CellShape.Phrase && !habits.IsMostly(first, CellShape.Phrase) && first == 0));
    }

    /// <summary>True when a row repeats the header.</summary>
    public static bool IsHeader(RowCells row, IReadOnlyList<string> header)
    {
        if (row.Count < header.Count)
        {
            return false;
        }

        bool any = false;
        for (int i = 0; i < header.Count; i++)
        {
            if (!row[i].Trim().SequenceEqual(header[i].AsSpan().Trim()))
            {
                return false;
            }

            any |= !row[i].IsWhiteSpace();
        }

        return any;
    }

    // Nearly every row begins with a number or a date and needs no count.
    private static bool MayBeWord(ReadOnlySpan<char> first) => first.Length > 2 && char.IsLetter(first[0]) && char.IsLetter(first[1]);

    private static int CountFilled(RowCells row)
    {
        int filled = 0;
        for (int i = 0; i < row.Count; i++)
        {
            filled += row[i].IsWhiteSpace() ? 0 : 1;
        }

        return filled;
    }

    private static int FirstFilled(RowCells row)
    {
        int i = 0;
        while (i < row.Count && row[i].IsWhiteSpace())
        {
            i++;
        }

        return i < row.Count ? i : -1;
    }

    private static bool HasLetterOrDigit(ReadOnlySpan<char> text)
    {
        foreach (char c in text)
        {
            if (char.IsLetterOrDigit(c))
            {
                return true;
            }
        }

        return false;
    }

    [GeneratedRegex(@"^(?:(?:sub|grand|page|sous|zwischen)[- ]?)?(?:totals?|totale?n?|totaal|gesamt|summe|gesamtsumme|somme|suma|razem|insgesamt|rows|records|count|sum)(?:\s+(?:of|for|rows?|records?|jobs?|lines?|parts?|count|amount|cost|price|value)\b.*)?\s*(?:[:=].*|[-\d.,\s]*)$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Total();

    [GeneratedRegex(@"\bend of (?:list|file|report|data|export)\b|^(?:printed|exported) |^page \d|^(?:rows|records|count|jobs|lines)\s*[:=]", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex EndWords();
}
