using PartsSignal.Analysis.Statistics;
using PartsSignal.Reports.Charts;
using PartsSignal.Reports.Components;

namespace PartsSignal.Reports.Monthly;

/// <summary>What is failing more than it should, as far as the month can tell.</summary>
/// <param name="Alarms">The alarms that stand by themselves, strongest first.</param>
/// <param name="Parts">Alarms that one of those explains.</param>
/// <param name="Before">Alarms of the months before.</param>
/// <param name="SeriesScanned">Series that were looked at.</param>
/// <param name="Rule">In words: when a series counts as rising, and how false alarms are held down.</param>
/// <param name="Blind">What the month was too small to see; empty: not known.</param>
public sealed record RisingFacts(
    IReadOnlyList<RisingAlarm> Alarms, IReadOnlyList<ExplainedAlarm> Parts, IReadOnlyList<EarlierAlarm> Before, long SeriesScanned, string Rule, string Blind);

/// <summary>One series that rose.</summary>
/// <param name="Name">The series in words.</param>
/// <param name="Slow">True: a slow rise, counted since it began; false: more than this month should have.</param>
/// <param name="Seen">Calls counted.</param>
/// <param name="Expected">Calls to be expected from the months before.</param>
/// <param name="Ratio">Seen over expected.</param>
/// <param name="PValue">Chance of so many or more if nothing changed; null: a slow rise.</param>
/// <param name="Since">First month of the rise as far as it can be told; null: cannot be told.</param>
/// <param name="Evidence">What speaks for and against one cause, a sentence each.</param>
/// <param name="Months">The series; empty: not kept.</param>
/// <param name="Jobs">The jobs behind it.</param>
public sealed record RisingAlarm(
    string Name, bool Slow, long Seen, double Expected, Estimate Ratio, double? PValue, DateOnly? Since, IReadOnlyList<string> Evidence,
    IReadOnlyList<SeriesMonth> Months, IReadOnlyList<AlarmJob> Jobs)
{
    /// <summary>The alarm in a few words.</summary>
    public string InShort => $"{Name} ({Format.Count(Seen)} calls where {Format.Number(Expected)} were to be expected{(Slow && Since is { } since ? $", since {Format.Month(since)}" : "")})";
}

/// <summary>A rise that another one explains.</summary>
public sealed record ExplainedAlarm(string Name, long Seen, double Expected, string PartOf);

/// <summary>A rise told in an earlier month.</summary>
public sealed record EarlierAlarm(DateOnly Month, string Name, long Seen, double Expected, DateOnly? Since);

/// <summary>A job behind an alarm.</summary>
public sealed record AlarmJob(string JobId, DateOnly OpenedOn, string? Model, double? AgeYears, string? Complaint, string? PartNumber, string? Supplier);
