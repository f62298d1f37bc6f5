using System.Globalization;
using PartsSignal.Analysis.Statistics;

namespace PartsSignal.Reports.Components;

/// <summary>Formats figures for running text and cells, the same on every machine.</summary>
internal static class Format
{
    private const string Thin = "\u00A0";

    /// <summary>A whole number with commas, for example 20,145.</summary>
    public static string Count(long value) => value.ToString("#,0", CultureInfo.InvariantCulture);

    /// <summary>A share (0 to 1) as a percentage with one decimal.</summary>
    public static string Percent(double share) => (share * 100).ToString("0.0", CultureInfo.InvariantCulture) + Thin + "%";

    /// <summary>A number with three significant digits.</summary>
    public static string Number(double value)
    {
        double size = Math.Abs(value);
        string format = size >= 100 ? "#,0" : size >= 10 ? "0.0" : size >= 1 || size == 0 ? "0.00" : "0.000";
        return value.ToString(format, CultureInfo.InvariantCulture);
    }

    /// <summary>A label of an axis tick, with no more decimals than it needs.</summary>
    public static string Tick(double value) => Math.Round(value, 6).ToString("#,0.####", CultureInfo.InvariantCulture);

    /// <summary>The text cut to so many characters, with an ellipsis where it was cut.</summary>
    public static string Shorten(string text, int most) => text.Length <= most ? text : text[..(most - 1)].TrimEnd() + "\u2026";

    /// <summary>A day, for example February 29, 2024.</summary>
    public static string Day(DateOnly day) => day.ToString("MMMM d, yyyy", CultureInfo.InvariantCulture);

    /// <summary>A month, for example February 2024.</summary>
    public static string Month(DateOnly month) => month.ToString("MMMM yyyy", CultureInfo.InvariantCulture);

    /// <summary>A share with its interval, or why there is none.</summary>
    public static string Share(Estimate share) => Interval(share, v => (v * 100).ToString("0.0", CultureInfo.InvariantCulture), Thin + "%");

    /// <summary>A number with its interval, or why there is none.</summary>
    public static string Estimate(Estimate estimate) => Interval(estimate, Number, "");

    /// <summary>Words as stored (<c>inlet_valve</c>) as words for people (inlet valve).</summary>
    public static string Words(string? stored) => stored switch
    {
        null => "not known",
        "none" => "no part needed",
        "other_part" => "part not named",
        _ => stored.Replace('_', ' '),
    };

    /// <summary>Text with its first letter in upper case.</summary>
    public static string Capital(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];

    private static string Interval(Estimate estimate, Func<double, string> text, string unit)
    {
        if (estimate.Value is not { } value)
        {
            return estimate.Missing ?? "not known";
        }

        return (estimate.Lower, estimate.Upper) switch
        {
            ({ } low, { } high) => $"{text(value)}{unit} ({text(low)}\u2013{text(high)})",
            ({ } low, null) => $"{text(value)}{unit} (from {text(low)})",
            (null, { } high) => $"{text(value)}{unit} (up to {text(high)})",
            _ => text(value) + unit,
        };
    }
}
