using PartsSignal.Analysis.CrossReference;

namespace PartsSignal.Pipeline.Words;

/// <summary>
/// How far a typed word may be from a known one. A slip is a letter too many, too few, wrong, or two neighbors swapped
/// (Damerau 1964, each letter moved once).
/// </summary>
internal static class FuzzyMatch
{
    /// <summary>Slips allowed for a known word of that length that stands alone: none under five letters, one from five, two from nine.</summary>
    public static int Allowed(int length) => length < 5 ? 0 : length < 9 ? 1 : 2;

    /// <summary>
    /// True when the typed word can stand alone for the known one: within the allowed slips with the same first letter,
    /// or, from four letters, with two neighbors swapped or a letter typed twice.
    /// </summary>
    public static bool IsClose(ReadOnlySpan<char> typed, ReadOnlySpan<char> known)
    {
        int most = Allowed(known.Length);
        return (most > 0 && typed.Length > 0 && typed[0] == known[0] && Math.Abs(typed.Length - known.Length) <= most && StringDistance.OptimalAlignment(typed, known, most) <= most)
            || (known.Length >= 4 && (IsSwap(typed, known) || IsDoubled(typed, known)));
    }

    /// <summary>True when the typed word can stand for the known one among other words that are right: one slip in a word of three letters or more.</summary>
    public static bool IsNear(ReadOnlySpan<char> typed, ReadOnlySpan<char> known) =>
        known.Length >= 3 && typed.Length >= 2 && Math.Abs(typed.Length - known.Length) <= 1 && StringDistance.OptimalAlignment(typed, known, 1) <= 1;

    private static bool IsSwap(ReadOnlySpan<char> typed, ReadOnlySpan<char> known)
    {
        if (typed.Length != known.Length)
        {
            return false;
        }

        int i = typed.CommonPrefixLength(known);
        return i + 1 < known.Length && typed[i] == known[i + 1] && typed[i + 1] == known[i] && typed[(i + 2)..].SequenceEqual(known[(i + 2)..]);
    }

    private static bool IsDoubled(ReadOnlySpan<char> typed, ReadOnlySpan<char> known)
    {
        int i = typed.CommonPrefixLength(known);
        return typed.Length == known.Length + 1 && i > 0 && typed[i] == typed[i - 1] && typed[(i + 1)..].SequenceEqual(known[i..]);
    }
}
