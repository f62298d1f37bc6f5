using System.Text.RegularExpressions;

namespace PartsSignal.Pipeline.Cleaning;

/// <summary>Takes prices out of a text of parts: <c>pump R$ 96,00</c>, <c>belt (38.50 EUR)</c>. Only a currency mark makes a number a price.</summary>
internal static partial class PricesInText
{
    /// <summary>The text without amounts of money, so that their commas and digits are not taken for parts.</summary>
    public static ReadOnlySpan<char> Without(ReadOnlySpan<char> text) =>
        Price().IsMatch(text) ? Price().Replace(text.ToString(), " ").AsSpan().Trim() : text;

    [GeneratedRegex(@"\(?(?<![\p{L}\d])(?:(?:\p{Lu}{1,2})?\p{Sc}|(?:EUR|USD|GBP|CHF|SEK|NOK|DKK|PLN|CZK|HUF|BRL|MXN|kr)\b\.?)\s?\d{1,6}(?:[.,'\u00a0]\d{3})*(?:[.,]\d{1,2}|,-)?(?![\d\p{L}])\)?|\(?(?<![\p{L}\d.,-])\d{1,6}(?:[.,'\u00a0]\d{3})*(?:[.,]\d{1,2}|,-)?\s?(?:\p{Sc}|(?:EUR|USD|GBP|CHF|SEK|NOK|DKK|PLN|CZK|HUF|BRL|MXN|kr|z\u0142|K\u010d)(?![\p{L}\d]))\)?", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Price();
}
