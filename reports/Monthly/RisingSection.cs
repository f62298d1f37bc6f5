using PartsSignal.Reports.Charts;
using PartsSignal.Reports.Components;

namespace PartsSignal.Reports.Monthly;

/// <summary>What is failing more than it should, as far as the month can tell.</summary>
/// <param name="Alarms">The alarms that no other one explains, strongest first.</param>
/// <param name="Parts">Alarms that one of those explains.</param>
/// <param name="Before">Alarms of earlier months.</param>
/// <param name="SeriesScanned">Series that were tested.</param>
/// <param name="Rule">In words: when a series counts as rising, and how false alarms are kept down.</param>
/// <param name="Blind">In words: which rises are too small for one month to show; empty if not known.</param>
internal sealed record RisingFacts(
    IReadOnlyList<RisingAlarm> Alarms, IReadOnlyList<ExplainedAlarm> Parts, IReadOnlyList<EarlierAlarm> Before, long SeriesScanned, string Rule, string Blind);

/// <summary>One series that rose.</summary>
/// <param name="Name">The series in words.</param>
/// <param name="Slow">True for a slow rise, counted since it began; false for more calls in this month than expected.</param>
/// <param name="Seen">Calls counted.</param>
/// <param name="Expected">Calls expected from earlier months.</param>
/// <param name="LeastRatio">How many times the usual it is at least, given that it was large enough to be named, or null for a slow rise or if that cannot be told.</param>
/// <param name="PValue">Chance of so many or more if nothing changed, or null for a slow rise.</param>
/// <param name="Since">First month of the rise, or null if it cannot be told.</param>
/// <param name="Evidence">What speaks for and against one cause, a sentence each.</param>
/// <param name="Months">The series; empty if it was not kept.</param>
/// <param name="Jobs">The jobs behind it.</param>
internal sealed record RisingAlarm(
    string Name, bool Slow, long Seen, double Expected, double? LeastRatio, double? PValue, DateOnly? Since, IReadOnlyList<string> Evidence,
    IReadOnlyList<SeriesMonth> Months, IReadOnlyList<AlarmJob> Jobs)
{
    /// <summary>The alarm in a few words.</summary>
    public string InShort => $"{Name} ({Format.Count(Seen)} calls where {Format.Number(Expected)} were to be expected{(Slow && Since is { } since ? $", since {Format.Month(since)}" : "")})";
}

/// <summary>A rise that another one explains.</summary>
internal sealed record ExplainedAlarm(string Name, long Seen, double Expected, string PartOf);

/// <summary>A rise reported in an earlier month.</summary>
internal sealed record EarlierAlarm(DateOnly Month, string Name, long Seen, double Expected, DateOnly? Since);

/// <summary>A job behind an alarm.</summary>
internal sealed record AlarmJob(string JobId, DateOnly OpenedOn, string? Model, double? AgeYears, string? ComplaintText, string? Parts, string? Supplier);

/// <summary>What is rising: each alarm with its plot and the jobs behind it.</summary>
internal static class RisingSection
{
    private const int AlarmsDrawn = 6;
    private const int JobsShown = 25;

    /// <param name="facts">What is known, or null if trends were not computed.</param>
    public static Section Build(RisingFacts? facts) => new("rising", "What is rising", [.. Blocks(facts)]);

    private static IEnumerable<IBlock> Blocks(RisingFacts? facts)
    {
        if (facts is null)
        {
            return [new Missing("Trends were not computed for this month: they need a baseline of earlier months with closed jobs of known cause.")];
        }

        return
        [
            new Paragraph(facts.Alarms.Count == 0
                ? $"Nothing is clearly increasing. We checked {Format.Count(facts.SeriesScanned)} call counts: by part, by family, and by part within a family."
                : $"We checked {Format.Count(facts.SeriesScanned)} call counts: by part, by family, and by part within a family. {Format.Count(facts.Alarms.Count)} rose more than chance usually explains."),
            new Paragraph(facts.Rule),
            .. facts.Blind.Length > 0 ? [new Paragraph(facts.Blind)] : Array.Empty<IBlock>(),
            .. facts.Alarms.Take(AlarmsDrawn).SelectMany((a, i) => Alarm(a, i + 1)),
            .. Lists(facts),
        ];
    }

    private static IEnumerable<IBlock> Alarm(RisingAlarm alarm, int number)
    {
        string conclusion = $"{Format.Count(alarm.Seen)} calls {(alarm.Slow ? "since it began" : "in the month")} where about {Format.Number(alarm.Expected)} were expected. {Size(alarm)}{Chance(alarm.PValue)}{(alarm.Since is { } since ? $" The rise began about {Format.Month(since)}." : "")}";
        yield return new SubHeading($"{number}. {alarm.Name}");
        yield return alarm.Months.Count == 0 ? new Paragraph(conclusion) : new MonthlySeries(
            new ChartText($"rising-{number}", $"Calls by month: {alarm.Name}", conclusion,
                $"Jobs of known cause by month of the call, {Format.Month(alarm.Months[0].Month)} to {Format.Month(alarm.Months[^1].Month)}; {Format.Count((long)alarm.Months.Sum(m => m.Count))} jobs.",
                $"Bars by month. {conclusion}"),
            "calls per month", alarm.Months);
        if (alarm.Evidence.Count > 0)
        {
            yield return new Paragraph(string.Join(" ", alarm.Evidence));
        }

        yield return TableView.Create($"rising-jobs-{number}", $"Jobs behind it: {alarm.Name}",
            alarm.Jobs.Count > JobsShown ? $"The newest {JobsShown} of {Format.Count(alarm.Jobs.Count)} jobs." : $"{Format.Count(alarm.Jobs.Count)} jobs.",
            alarm.Jobs.Take(JobsShown),
            [
                new("Job", j => j.JobId, CellKind.Code), new("Called on", j => j.OpenedOn, CellKind.Day), new("Model", j => j.Model), new("Age, years", j => j.AgeYears, CellKind.Number),
                new("Complaint", j => j.ComplaintText), new("Part fitted", j => j.Parts), new("Supplier", j => j.Supplier),
            ]) with
        {
            WhenEmpty = "The jobs behind this alarm are not listed.",
        };
    }

    private static IEnumerable<TableView> Lists(RisingFacts facts)
    {
        if (facts.Alarms.Count > AlarmsDrawn)
        {
            yield return TableView.Create("rising-more", "Further rises", "Those less clear than the ones above.", facts.Alarms.Skip(AlarmsDrawn),
                [
                    new("What", a => a.Name), new("Calls", a => a.Seen, CellKind.Count), new("Expected", a => a.Expected, CellKind.Number),
                    new("At least, times the usual", a => a.Slow ? null : a.LeastRatio, CellKind.Number), new("Since", a => Month(a.Since)),
                ]);
        }

        if (facts.Parts.Count > 0)
        {
            yield return TableView.Create("rising-explained", "Rises that one above explains", "They rise because they hold, or are held by, the other.", facts.Parts,
                [new("What", p => p.Name), new("Calls", p => p.Seen, CellKind.Count), new("Expected", p => p.Expected, CellKind.Number), new("Explained by", p => p.PartOf)]);
        }

        yield return TableView.Create("rising-before", "Flagged in the last six months", "Each as it could be told at its month's end.", facts.Before,
            [
                new("Month", b => Format.Month(b.Month)), new("What", b => b.Name), new("Calls", b => b.Seen, CellKind.Count), new("Expected", b => b.Expected, CellKind.Number),
                new("Since", b => Month(b.Since)),
            ]) with
        {
            WhenEmpty = "Nothing was flagged in the last six months.",
        };
    }

    private static string? Month(DateOnly? month) => month is { } known ? Format.Month(known) : null;

    private static string Size(RisingAlarm alarm) => alarm.Slow
        ? "How large the rise is cannot be told: its first month was chosen because the rise looks clearest from there."
        : alarm.LeastRatio is { } times
        ? $"The true rate is very likely at least {Format.Number(times)} times the usual, even allowing for the fact that only the biggest rises are listed."
        : "How large the rise is cannot be told yet: what stands out in one month often looks larger than it is.";

    private static string Chance(double? p) => p is not { } chance ? ""
        : $" By chance alone so many would come in {(chance < 0.0001 ? "fewer than 1 month in 10,000" : $"about 1 month in {Format.Count((long)Math.Round(1 / chance))}")}.";
}
