namespace PartsSignal.Pipeline.Cleaning;

/// <summary>What people type where they know nothing.</summary>
public static class EmptyMark
{
    private static readonly HashSet<string> Words = new(StringComparer.OrdinalIgnoreCase)
    {
        "n/a", "na", "n.a.", "none", "null", "nil", "unknown", "unk", "not known", "tbc", "tba", "?", "-", "--", "---", ".", "x", "0000-00-00", "(blank)", "#n/a",
    };

    private static readonly HashSet<string>.AlternateLookup<ReadOnlySpan<char>> Lookup = Words.GetAlternateLookup<ReadOnlySpan<char>>();

    /// <summary>True for an empty cell and for marks like n/a, unknown, ???? and -.</summary>
    public static bool Is(ReadOnlySpan<char> cell)
    {
        cell = cell.Trim();
        return cell.IsEmpty || (cell.Length <= 12 && (Lookup.Contains(cell) || cell.IndexOfAnyExcept('?') < 0));
    }
}
