using PartsSignal.Reports.Charts;

namespace PartsSignal.Reports.Monthly.Rising;

/// <summary>What is failing more than it should, as far as the month can tell.</summary>
/// <param name="Alarms">The alarms, strongest first.</param>
/// <param name="SeriesScanned">Series that were looked at.</param>
/// <param name="Rule">In words: when a series counts as rising, and how false alarms are held down.</param>
/// <param name="Blind">What the month was too small to see.</param>
public sealed record RisingFacts(IReadOnlyList<RisingAlarm> Alarms, long SeriesScanned, string Rule, string Blind);

/// <summary>One series that rose.</summary>
/// <param name="Component">The component.</param>
/// <param name="Family">The model family; null: all families.</param>
/// <param name="Seen">Calls counted in the month.</param>
/// <param name="Expected">Calls to be expected from the months before.</param>
/// <param name="PValue">Chance of so many or more if nothing changed; null: the alarm came from a running sum.</param>
/// <param name="Since">First month of the rise as far as it can be told; null: cannot be told.</param>
/// <param name="Kind">In words, what raised the alarm.</param>
/// <param name="Months">The series.</param>
/// <param name="Jobs">The jobs behind it.</param>
public sealed record RisingAlarm(
    string Component, string? Family, long Seen, double Expected, double? PValue, DateOnly? Since, string Kind,
    IReadOnlyList<SeriesMonth> Months, IReadOnlyList<AlarmJob> Jobs)
{
    /// <summary>The alarm in a few words.</summary>
    public string InShort => $"{Pages.Shown.Words(Component)}{(Family is null ? "" : " on family " + Family)} ({Pages.Shown.Count(Seen)} calls where {Pages.Shown.Number(Expected)} were to be expected)";
}

/// <summary>A job behind an alarm.</summary>
public sealed record AlarmJob(string JobId, DateOnly OpenedOn, string? Model, double? AgeYears, string? Complaint, string? PartNumber, string? Supplier);
