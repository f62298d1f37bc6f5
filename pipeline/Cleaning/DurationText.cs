namespace PartsSignal.Pipeline.Cleaning;

/// <summary>Reads a working time into minutes: <c>1h20</c>, <c>1 h 20 min</c>, <c>1:20</c>, <c>80 min</c>, <c>1.5</c>.</summary>
internal static class DurationText
{
    private static readonly string[] MinuteWords = ["minutes", "minute", "mins.", "mins", "min.", "min", "m", "'"];

    /// <summary>Reads minutes, 0 or more.</summary>
    /// <param name="cell">The text.</param>
    /// <param name="hours">What a number without a unit means in this file: hours, else minutes.</param>
    /// <param name="minutes">The minutes.</param>
    public static bool TryRead(ReadOnlySpan<char> cell, bool hours, out double minutes)
    {
        minutes = 0;
        ReadOnlySpan<char> text = cell.Trim();
        if (TryNumber(text, out double bare))
        {
            minutes = hours ? bare * 60 : bare;
            return true;
        }

        int colon = text.IndexOf(':');
        if (colon > 0)
        {
            ReadOnlySpan<char> rest = text[(colon + 1)..];
            int second = rest.IndexOf(':');
            return TryPair(text[..colon], second < 0 ? rest : rest[..second], out minutes);
        }

        int h = text.IndexOfAny('h', 'H');
        if (h > 0)
        {
            ReadOnlySpan<char> rest = text[h..].TrimStart("hHoOuUrRsS. ");
            return TryPair(text[..h].TrimEnd(), WithoutMinuteWord(rest), out minutes);
        }

        ReadOnlySpan<char> plain = WithoutMinuteWord(text);
        return plain.Length < text.Length && TryNumber(plain, out minutes);
    }

    /// <summary>True when a bare number can only be minutes (15 or more): nobody works fifteen hours at a washer.</summary>
    public static bool MustBeMinutes(ReadOnlySpan<char> cell) => TryNumber(cell.Trim(), out double value) && value >= 15;

    private static bool TryPair(ReadOnlySpan<char> hours, ReadOnlySpan<char> minutes, out double total)
    {
        total = 0;
        double m = 0;
        if (!TryNumber(hours, out double h) || (!minutes.IsEmpty && !TryNumber(minutes, out m)) || m >= 60)
        {
            return false;
        }

        total = (h * 60) + m;
        return true;
    }

    private static ReadOnlySpan<char> WithoutMinuteWord(ReadOnlySpan<char> text)
    {
        foreach (string word in MinuteWords)
        {
            if (text.EndsWith(word, StringComparison.OrdinalIgnoreCase))
            {
                return text[..^word.Length].TrimEnd();
            }
        }

        return text;
    }

    private static bool TryNumber(ReadOnlySpan<char> text, out double value)
    {
        value = 0;
        text = text.Trim();
        NumberStyle style = text.Contains(',') ? NumberStyle.Comma : NumberStyle.Point;
        if (text.IsEmpty || !char.IsAsciiDigit(text[0]) || !NumberText.TryRead(text, style, out decimal number) || number > 100_000)
        {
            return false;
        }

        value = (double)number;
        return true;
    }
}
