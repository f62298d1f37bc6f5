using System.Globalization;

namespace PartsSignal.Pipeline.Cleaning;

/// <summary>Reads an amount: signs before or behind, brackets for minus, currency marks, grouping, either decimal mark.</summary>
internal static class MoneyText
{
    /// <summary>Largest amount the store can hold, without its sign.</summary>
    public const decimal Largest = 9_999_999_999.99m;

    private static readonly string[] Currencies =
        ["eur", "usd", "gbp", "chf", "sek", "nok", "dkk", "isk", "pln", "czk", "huf", "cad", "aud", "nzd", "zar", "inr", "jpy", "brl", "mxn", "kr", "fr", "rs", "euro", "euros", "z\u0142", "k\u010d", "ft", "r"];

    /// <summary>Reads an amount, rounded to two decimals, halves away from zero. Amounts the store cannot hold are not read.</summary>
    public static bool TryRead(ReadOnlySpan<char> cell, NumberStyle style, out decimal amount)
    {
        amount = 0;
        ReadOnlySpan<char> text = WithoutCurrency(cell.Trim());
        bool minus = false;

        // 12,- and 12.- are whole amounts.
        if (text.Length > 2 && text[^1] == '-' && text[^2] is ('.' or ','))
        {
            text = text[..^2];
        }

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

        if (text.IsEmpty || text[0] is '-' or '+' || !NumberText.TryRead(text, style, out decimal value))
        {
            return false;
        }

        amount = Math.Round(minus ? -value : value, 2, MidpointRounding.AwayFromZero);
        return Math.Abs(amount) <= Largest;
    }

    // A mark or a known word at either end: £, $, US$, EUR, kr, Fr.
    private static ReadOnlySpan<char> WithoutCurrency(ReadOnlySpan<char> text)
    {
        text = text.Trim();
        int start = 0;
        while (start < text.Length && IsCurrency(text[start]))
        {
            start++;
        }

        if (start > 0 && start < text.Length && IsMark(text[..start]))
        {
            text = text[start..].TrimStart(text[start] == '.' ? ". " : " ").TrimStart('\u00a0');
        }

        int end = text.EndsWith(".") ? text.Length - 1 : text.Length;
        int stop = end;
        while (end > 0 && IsCurrency(text[end - 1]))
        {
            end--;
        }

        return end > 0 && end < stop && IsMark(text[end..stop]) ? text[..end].TrimEnd() : text;
    }

    private static bool IsCurrency(char c) => char.IsLetter(c) || char.GetUnicodeCategory(c) == UnicodeCategory.CurrencySymbol;

    private static bool IsMark(ReadOnlySpan<char> word)
    {
        if (!char.IsLetter(word[^1]) || !char.IsLetter(word[0]))
        {
            return word.Length <= 4;
        }

        foreach (string known in Currencies)
        {
            if (word.Equals(known, StringComparison.OrdinalIgnoreCase))
            {
                return true;
            }
        }

        return false;
    }
}
