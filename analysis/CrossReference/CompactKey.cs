namespace PartsSignal.Analysis.CrossReference;

/// <summary>
/// Keys under which the same number, typed in different ways, meets itself. The compact key may be used to join;
/// the confusable key only to look for candidates, because real numbers do differ in O and 0.
/// </summary>
public static class CompactKey
{
    /// <summary>
    /// Upper case, letters A-Z and digits only; full-width forms and raised or lowered digits count as their plain
    /// ones. Empty when nothing is left.
    /// </summary>
    public static string From(string? raw)
    {
        if (string.IsNullOrWhiteSpace(raw))
        {
            return "";
        }

        Span<char> kept = raw.Length <= 128 ? stackalloc char[raw.Length] : new char[raw.Length];
        int n = From(raw, kept);
        return n == raw.Length && kept.SequenceEqual(raw) ? raw : new string(kept[..n]);
    }

    /// <summary>The same into a span of at least the raw text's length.</summary>
    /// <returns>Characters of the key.</returns>
    public static int From(ReadOnlySpan<char> raw, Span<char> key)
    {
        int n = 0;
        foreach (char c in raw)
        {
            char plain = Plain(c);
            if (char.IsAsciiLetterOrDigit(plain))
            {
                key[n++] = char.IsAsciiLetterLower(plain) ? (char)(plain - 0x20) : plain;
            }
        }

        return n;
    }

    /// <summary>A compact key with O read as 0, I and L read as 1.</summary>
    public static string Confusable(string compact) =>
        compact.AsSpan().IndexOfAny("OIL") < 0 ? compact : compact.Replace('O', '0').Replace('I', '1').Replace('L', '1');

    private static char Plain(char c) => c switch
    {
        < '\u0080' => c,
        >= '\uff01' and <= '\uff5e' => (char)(c - 0xfee0),
        '\u00b9' => '1',
        '\u00b2' => '2',
        '\u00b3' => '3',
        '\u2070' or >= '\u2074' and <= '\u2079' => (char)('0' + (c - '\u2070')),
        >= '\u2080' and <= '\u2089' => (char)('0' + (c - '\u2080')),
        _ => c,
    };
}
