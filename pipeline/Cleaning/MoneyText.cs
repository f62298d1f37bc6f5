namespace PartsSignal.Pipeline.Cleaning;

/// <summary>Reads an amount: signs before or behind, brackets for minus, currency marks, grouping, either decimal mark.</summary>
public static class MoneyText
{
    /// <summary>Largest amount the store can hold, without its sign.</summary>
    public const decimal Largest = 9_999_999_999.99m;

    /// <summary>Reads an amount, rounded to two decimals, halves away from zero. Amounts the store cannot hold are not read.</summary>
    public static bool TryRead(ReadOnlySpan<char> cell, NumberStyle style, out decimal amount)
    {
        amount = 0;
        ReadOnlySpan<char> text = WithoutCurrency(cell.Trim());
        bool minus = false;
        if (text.Length > 2 && text[0] == '(' && text[^1] == ')')
        {
            minus = true;
            text = WithoutCurrency(text[1..^1]);
        }
        else if (text.Length > 1 && text[^1] is '-' or '\u2212')
        {
            minus = true;
            text = WithoutCurrency(text[..^1]);
        }
        else if (text.Length > 1 && text[0] is '-' or '\u2212')
        {
            minus = true;
            text = WithoutCurrency(text[1..]);
        }

        // 12,- and 12.- are whole amounts.
        if (text.Length > 1 && text[^1] is '.' or ',')
        {
            text = text[..^1];
        }

        if (text.IsEmpty || text[0] is '-' or '+' || !NumberText.TryRead(text, style, out decimal value))
        {
            return false;
        }

        amount = Math.Round(minus ? -value : value, 2, MidpointRounding.AwayFromZero);
        return Math.Abs(amount) <= Largest;
    }

    // A mark or a short word at either end: £, $, EUR, kr, Fr.
    private static ReadOnlySpan<char> WithoutCurrency(ReadOnlySpan<char> text)
    {
        text = text.Trim();
        int start = 0;
        while (start < text.Length && start < 4 && IsCurrency(text[start]))
        {
            start++;
        }

        if (start > 0 && start < text.Length && text[start] == '.' && start + 1 < text.Length && text[start + 1] is ' ')
        {
            start++;
        }

        int end = text.Length;
        if (end > start && text[end - 1] == '.' && end > start + 2 && IsCurrency(text[end - 2]))
        {
            end--;
        }

        int stop = end;
        while (end > start && stop - end < 4 && IsCurrency(text[end - 1]))
        {
            end--;
        }

        return text[start..(end == stop ? text.Length : end)].Trim();
    }

    private static bool IsCurrency(char c) => char.IsLetter(c) || char.GetUnicodeCategory(c) == System.Globalization.UnicodeCategory.CurrencySymbol;
}
