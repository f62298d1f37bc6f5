using System.Buffers;

namespace PartsSignal.Pipeline.Cleaning;

/// <summary>What people type where they know nothing.</summary>
internal static class EmptyMark
{
    private static readonly HashSet<string> Words = new(StringComparer.OrdinalIgnoreCase)
    {
        "n/a", "na", "n.a.", "none", "null", "nil", "unknown", "unk", "not known", "tbc", "tba", "?", "-", "--", "---", ".", "x", "0000-00-00", "(blank)", "#n/a",
    };

    private const int Longest = 12;

    // Nearly every cell begins with another character and needs no look-up.
    private static readonly SearchValues<char> First = SearchValues.Create([.. Words.SelectMany(w => new[] { char.ToLowerInvariant(w[0]), char.ToUpperInvariant(w[0]) }).Distinct()]);

    private static readonly HashSet<string>.AlternateLookup<ReadOnlySpan<char>> Lookup = Words.GetAlternateLookup<ReadOnlySpan<char>>();

    // What the field of a form leaves where nobody typed a day: "  /  /    ", "__.__.____".
    private static readonly SearchValues<char> Form = SearchValues.Create("/.-_: ");

    private const int ShortestZeroDay = 6;

    // The day that a database writes where there is none: 00.00.0000. A lone 0 or 0.00 is a number.
    private static readonly SearchValues<char> ZeroDay = SearchValues.Create("0/.-");

    /// <summary>True for an empty cell, for marks like n/a, unknown, ???? and -, and for the empty form of a date or its zeros.</summary>
    public static bool Is(ReadOnlySpan<char> cell)
    {
        cell = cell.Trim();
        return cell.IsEmpty || (cell.Length <= Longest && (First.Contains(cell[0]) || Form.Contains(cell[0])) && (Lookup.Contains(cell) || cell.IndexOfAnyExcept('?') < 0 || cell.IndexOfAnyExcept(Form) < 0)) || IsZeroDay(cell);
    }

    private static bool IsZeroDay(ReadOnlySpan<char> cell) =>
        cell[0] == '0' && cell.Length is >= ShortestZeroDay and <= Longest && cell.IndexOfAnyExcept(ZeroDay) < 0 && cell.Length - cell.Count('0') == 2;
}
