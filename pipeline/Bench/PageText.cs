using System.Globalization;

namespace PartsSignal.Pipeline.Bench;

/// <summary>What is stored, in words for people.</summary>
internal static class PageText
{
    /// <summary>A month such as <c>2026-03</c>: March 2026.</summary>
    /// <exception cref="FormatException">It is no month.</exception>
    public static string Month(string month) => Month(DateOnly.ParseExact(month + "-01", "yyyy-MM-dd", CultureInfo.InvariantCulture));

    /// <summary>The month of a day: March 2026.</summary>
    public static string Month(DateOnly day) => day.ToString("MMMM yyyy", CultureInfo.InvariantCulture);

    /// <summary>A day: March 5, 2026.</summary>
    public static string Day(DateOnly day) => day.ToString("MMMM d, yyyy", CultureInfo.InvariantCulture);

    /// <summary>What a call needed, worded as in the monthly report: a component, no part, or a part that nobody named.</summary>
    public static string Need(string need) => need switch
    {
        Analysis.Vocabulary.Need.NoPart => "no part needed",
        Analysis.Vocabulary.Need.OtherPart => "part not named",
        _ => Words(need),
    };

    /// <summary>A complaint kind.</summary>
    public static string Complaint(string kind) => kind switch
    {
        Analysis.Vocabulary.Need.NoComplaint => "no complaint given",
        Analysis.Vocabulary.Need.OtherComplaint => "complaint not recognized",
        _ => Words(kind),
    };

    /// <summary>The first items of a list, and how many more there are.</summary>
    /// <param name="items">The list.</param>
    /// <param name="most">How many are named.</param>
    public static string FirstOf(IReadOnlyList<string> items, int most) =>
        string.Join(", ", items.Take(most)) + (items.Count > most ? $" and {(items.Count - most).ToString("N0", CultureInfo.InvariantCulture)} more" : "");

    /// <summary>A stored name such as <c>inlet_valve</c>: inlet valve.</summary>
    public static string Words(string stored) => stored.Replace('_', ' ');
}
