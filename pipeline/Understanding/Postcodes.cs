using System.Text.RegularExpressions;

namespace PartsSignal.Pipeline.Understanding;

/// <summary>
/// Columns of postcodes, in the forms that letters or marks make unmistakable: British, Irish, Dutch, Canadian, Polish,
/// Portuguese, and American ones of nine digits. Postcodes of plain digits may be anything.
/// </summary>
internal static partial class Postcodes
{
    private const double NearlyAll = 0.9;
    private const int Fewest = 2;

    /// <summary>Whether nearly all cells are such postcodes, of more than one value.</summary>
    public static bool Are(ColumnSample column) =>
        column.Filled > 0 && column.Distinct >= Fewest && column.Texts.Count(t => Form().IsMatch(t)) >= NearlyAll * column.Filled;

    [GeneratedRegex(@"^(?:[A-Z]{1,2}[0-9][0-9A-Z]? ?[0-9][A-Z]{2}|[A-Z][0-9][0-9W] [0-9A-Z]{4}|[1-9][0-9]{3} ?[A-Z]{2}|[A-Z][0-9][A-Z] ?[0-9][A-Z][0-9]|[0-9]{2}-[0-9]{3}|[0-9]{4}-[0-9]{3}|[0-9]{5}-[0-9]{4})$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Form();
}
