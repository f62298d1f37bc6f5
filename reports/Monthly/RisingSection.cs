using PartsSignal.Reports.Charts;
using PartsSignal.Reports.Components;

namespace PartsSignal.Reports.Monthly;

/// <summary>What is rising: each alarm with its plot and the jobs behind it.</summary>
public static class RisingSection
{
    private const int AlarmsDrawn = 6;
    private const int JobsShown = 25;

    /// <summary>Puts the section together.</summary>
    /// <param name="facts">What is known; null: trends were not computed.</param>
    public static Section Build(RisingFacts? facts) => new("rising", "What is rising", [.. Blocks(facts)]);

    private static IEnumerable<IBlock> Blocks(RisingFacts? facts)
    {
        if (facts is null)
        {
            yield return new Missing("Trends were not computed for this month: they need a baseline of earlier months with closed jobs of known cause.");
            yield break;
        }

        yield return new Paragraph(facts.Alarms.Count == 0
            ? $"Nothing rose beyond what chance explains. {Format.Count(facts.SeriesScanned)} series were looked at."
            : $"{Format.Count(facts.Alarms.Count)} of {Format.Count(facts.SeriesScanned)} series rose beyond what chance explains.");
        yield return new Paragraph(facts.Rule);
        if (facts.Blind.Length > 0)
        {
            yield return new Paragraph(facts.Blind);
        }

        for (int i = 0; i < Math.Min(AlarmsDrawn, facts.Alarms.Count); i++)
        {
            foreach (IBlock block in Alarm(facts.Alarms[i], i + 1))
            {
                yield return block;
            }
        }

        foreach (TableView sheet in Lists(facts))
        {
            yield return sheet;
        }
    }

    private static IEnumerable<IBlock> Alarm(RisingAlarm alarm, int number)
    {
        string conclusion = $"{Format.Count(alarm.Seen)} calls {(alarm.Slow ? "since it began" : "in the month")} where {Format.Number(alarm.Expected)} were to be expected: {Format.Estimate(alarm.Ratio)} times the usual.{Chance(alarm.PValue)}{(alarm.Since is { } since ? $" The rise began about {Format.Month(since)}." : "")}";
        yield return new SubHeading($"{number}. {alarm.Name}");
        if (alarm.Months.Count > 0)
        {
            yield return new MonthlySeries(
                new ChartText($"rising-{number}", $"Calls by month: {alarm.Name}", conclusion,
                    $"Jobs of known cause by month of the call, {Format.Month(alarm.Months[0].Month)} to {Format.Month(alarm.Months[^1].Month)}; {Format.Count((long)alarm.Months.Sum(m => m.Count))} jobs.",
                    $"Bars by month. {conclusion}"),
                "calls per month", alarm.Months);
        }
        else
        {
            yield return new Paragraph(conclusion);
        }

        if (alarm.Evidence.Count > 0)
        {
            yield return new Paragraph(string.Join(" ", alarm.Evidence));
        }

        yield return new TableView($"rising-jobs-{number}", $"Jobs behind it: {alarm.Name}",
            alarm.Jobs.Count > JobsShown ? $"The newest {JobsShown} of {Format.Count(alarm.Jobs.Count)} jobs." : $"{Format.Count(alarm.Jobs.Count)} jobs.",
            [new("Job", CellKind.Code), new("Called on", CellKind.Day), new("Model"), new("Age, years", CellKind.Number), new("Complaint"), new("Part fitted"), new("Supplier")],
            [.. alarm.Jobs.Take(JobsShown).Select(j => (IReadOnlyList<object?>)[j.JobId, j.OpenedOn, j.Model, j.AgeYears, j.Complaint, j.PartNumber, j.Supplier])],
            "The jobs behind this alarm are not listed.");
    }

    private static IEnumerable<TableView> Lists(RisingFacts facts)
    {
        if (facts.Alarms.Count > AlarmsDrawn)
        {
            yield return new TableView("rising-more", "Further rises", "Those less clear than the ones above.",
                [new("What"), new("Calls", CellKind.Count), new("Expected", CellKind.Number), new("Times the usual (95 %)", CellKind.Number), new("Since")],
                [.. facts.Alarms.Skip(AlarmsDrawn).Select(a => (IReadOnlyList<object?>)[a.Name, a.Seen, a.Expected, a.Ratio, a.Since is { } s ? Format.Month(s) : null])]);
        }

        if (facts.Parts.Count > 0)
        {
            yield return new TableView("rising-explained", "Rises that one above explains", "They rise because they hold, or are held by, the other.",
                [new("What"), new("Calls", CellKind.Count), new("Expected", CellKind.Number), new("Explained by")],
                [.. facts.Parts.Select(p => (IReadOnlyList<object?>)[p.Name, p.Seen, p.Expected, p.PartOf])]);
        }

        yield return new TableView("rising-before", "Rises told in the six months before", "Each as it could be told at its month's end.",
            [new("Month"), new("What"), new("Calls", CellKind.Count), new("Expected", CellKind.Number), new("Since")],
            [.. facts.Before.Select(b => (IReadOnlyList<object?>)[Format.Month(b.Month), b.Name, b.Seen, b.Expected, b.Since is { } s ? Format.Month(s) : null])],
            "No rise was told in the six months before.");
    }

    private static string Chance(double? p) => p is not { } chance ? ""
        : $" By chance alone so many would come in {(chance < 0.0001 ? "fewer than 1 month in 10,000" : $"about 1 month in {Format.Count((long)Math.Round(1 / chance))}")}.";
}
