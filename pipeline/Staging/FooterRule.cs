using System.Text.RegularExpressions;
using PartsSignal.Pipeline.Reading;

namespace PartsSignal.Pipeline.Staging;

/// <summary>Tells what may stand below the data: a total, or a free line in one cell.</summary>
internal static partial class FooterRule
{
    private const int FewestColumns = 3;

    /// <summary>True for a row that sums up others: it begins with a word like total and leaves most cells empty.</summary>
    public static bool IsSummary(RowCells row, int width) =>
        width >= FewestColumns && MayBeWord(FirstFilled(row)) && CountFilled(row) * 2 <= Math.Max(width, 4) && Summary().IsMatch(FirstFilled(row));

    /// <summary>True for a row with a single filled cell.</summary>
    public static bool IsFreeLine(RowCells row, int width) => width >= FewestColumns && CountFilled(row) == 1;

    /// <summary>True for a row of so few cells that it is rather a line of text with a separator in it.</summary>
    public static bool IsShortLine(RowCells row, int width) => width >= 6 && row.Count * 4 <= width + 2;

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

    private static ReadOnlySpan<char> FirstFilled(RowCells row)
    {
        for (int i = 0; i < row.Count; i++)
        {
            if (!row[i].IsWhiteSpace())
            {
                return row[i].Trim();
            }
        }

        return [];
    }

    [GeneratedRegex(@"^(?:sub-?|grand |page )?totals?\b|^sum\b|^(?:rows|records|count|jobs|lines)\s*[:=]|^end of (?:list|file|report|data|export)\b|^(?:printed|exported|page \d)", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Summary();
}
