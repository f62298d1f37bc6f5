namespace PartsSignal.Pipeline.Words;

/// <summary>
/// How far a typed word may be from a known one: nothing for words under five letters, one slip from five, two from
/// nine; the first letter must be right. A slip is a letter too many, too few, wrong, or two neighbours swapped
/// (Damerau 1964, each letter moved once).
/// </summary>
public static class Spelling
{
    /// <summary>Slips allowed for a word of that length.</summary>
    public static int Allowed(int length) => length < 5 ? 0 : length < 9 ? 1 : 2;

    /// <summary>True when the typed word is within the allowed slips of the known one.</summary>
    public static bool IsClose(string typed, string known)
    {
        int most = Allowed(Math.Min(typed.Length, known.Length));
        return most > 0 && typed[0] == known[0] && Math.Abs(typed.Length - known.Length) <= most && Slips(typed, known, most) <= most;
    }

    /// <summary>Number of slips between two words; stops counting above a most.</summary>
    public static int Slips(ReadOnlySpan<char> a, ReadOnlySpan<char> b, int most)
    {
        Span<int> before = stackalloc int[b.Length + 1];
        Span<int> above = stackalloc int[b.Length + 1];
        Span<int> row = stackalloc int[b.Length + 1];
        for (int j = 0; j <= b.Length; j++)
        {
            above[j] = j;
        }

        for (int i = 1; i <= a.Length; i++)
        {
            row[0] = i;
            int least = i;
            for (int j = 1; j <= b.Length; j++)
            {
                int cost = a[i - 1] == b[j - 1] ? 0 : 1;
                row[j] = Math.Min(Math.Min(row[j - 1], above[j]) + 1, above[j - 1] + cost);
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                {
                    row[j] = Math.Min(row[j], before[j - 2] + 1);
                }

                least = Math.Min(least, row[j]);
            }

            if (least > most)
            {
                return most + 1;
            }

            Span<int> old = before;
            before = above;
            above = row;
            row = old;
        }

        return above[b.Length];
    }
}
