using System.Globalization;

namespace PartsSignal.Reports.Components;

/// <summary>How money is written in every page and command. Tables for programs (CSV, JSON) hold plain numbers instead.</summary>
public static class MoneyFormat
{
    private const string Blank = "\u00A0";

    /// <summary>
    /// An amount with the shop's currency: a sign such as $ stands before it, a code such as EUR behind it. Cents are
    /// left out from 1,000 up.
    /// </summary>
    /// <param name="amount">The amount.</param>
    /// <param name="currency">Mark of the currency; empty: the amount alone.</param>
    public static string Text(decimal amount, string currency)
    {
        string text = Math.Abs(amount).ToString(Math.Abs(amount) >= 1000 ? "#,0" : "0.00", CultureInfo.InvariantCulture);
        string sign = amount < 0 ? "-" : "";
        return currency.Length == 0 ? sign + text
            : currency.All(c => char.GetUnicodeCategory(c) == UnicodeCategory.CurrencySymbol) ? sign + currency + text
            : sign + text + Blank + currency;
    }
}
