namespace PartsSignal.Analysis.CrossReference;

/// <summary>How far two short texts are apart. Compared character by character, ordinal.</summary>
public static class StringDistance
{
    /// <summary>
    /// Optimal string alignment: insertions, deletions, substitutions and swaps of neighbors, no piece edited twice.
    /// </summary>
    /// <param name="a">One text.</param>
    /// <param name="b">The other.</param>
    /// <param name="most">Stops counting beyond this and answers <paramref name="most"/> + 1.</param>
    public static int OptimalAlignment(ReadOnlySpan<char> a, ReadOnlySpan<char> b, int most = int.MaxValue - 1)
    {
        if (Math.Abs(a.Length - b.Length) > most)
        {
            return most + 1;
        }

        int width = b.Length + 1;
        Span<int> rows = width <= 128 ? stackalloc int[3 * width] : new int[3 * width];
        Span<int> two = rows[..width], one = rows.Slice(width, width), now = rows.Slice(2 * width, width);
        for (int j = 0; j < width; j++)
        {
            one[j] = j;
        }

        for (int i = 1; i <= a.Length; i++)
        {
            now[0] = i;
            int least = i;
            for (int j = 1; j < width; j++)
            {
                int cost = a[i - 1] == b[j - 1] ? 0 : 1;
                int best = Math.Min(Math.Min(one[j] + 1, now[j - 1] + 1), one[j - 1] + cost);
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                {
                    best = Math.Min(best, two[j - 2] + 1);
                }

                now[j] = best;
                least = Math.Min(least, best);
            }

            if (least > most)
            {
                return most + 1;
            }

            Span<int> free = two;
            two = one;
            one = now;
            now = free;
        }

        return Math.Min(one[width - 1], most + 1);
    }

    /// <summary>
    /// Jaro similarity, 0 to 1 (Jaro 1989). Null when either text is empty: nothing can be compared.
    /// </summary>
    public static double? Jaro(string a, string b)
    {
        if (a.Length == 0 || b.Length == 0)
        {
            return null;
        }

        int window = Math.Max(0, Math.Max(a.Length, b.Length) / 2 - 1);
        var usedB = new bool[b.Length];
        var matchedA = new List<char>();
        for (int i = 0; i < a.Length; i++)
        {
            for (int j = Math.Max(0, i - window); j <= Math.Min(b.Length - 1, i + window); j++)
            {
                if (!usedB[j] && a[i] == b[j])
                {
                    usedB[j] = true;
                    matchedA.Add(a[i]);
                    break;
                }
            }
        }

        if (matchedA.Count == 0)
        {
            return 0;
        }

        double m = matchedA.Count;
        int outOfOrder = matchedA.Zip(b.Where((_, j) => usedB[j])).Count(p => p.First != p.Second);
        return (m / a.Length + m / b.Length + (m - outOfOrder / 2.0) / m) / 3;
    }

    /// <summary>
    /// Jaro-Winkler similarity (Winkler 1990): prefix scale 0.1, prefix of at most 4, applied at every similarity (no
    /// boost threshold). Null when either text is empty.
    /// </summary>
    public static double? JaroWinkler(string a, string b)
    {
        if (Jaro(a, b) is not { } jaro)
        {
            return null;
        }

        int prefix = 0;
        while (prefix < Math.Min(4, Math.Min(a.Length, b.Length)) && a[prefix] == b[prefix])
        {
            prefix++;
        }

        return jaro + prefix * 0.1 * (1 - jaro);
    }
}
