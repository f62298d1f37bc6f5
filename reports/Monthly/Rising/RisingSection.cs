using PartsSignal.Reports.Blocks;
using PartsSignal.Reports.Charts;
using PartsSignal.Reports.Pages;
using PartsSignal.Reports.Tables;

namespace PartsSignal.Reports.Monthly.Rising;

/// <summary>What is rising: each alarm with its plot and the jobs behind it.</summary>
public static class RisingSection
{
    private const int JobsShown = 25;

    /// <summary>Puts the section together.</summary>
    /// <param name="facts">What is known; null: trends were not computed.</param>
    public static SectionView Build(RisingFacts? facts) => new("rising", "What is rising", [.. Blocks(facts)]);

    private static IEnumerable<IBlock> Blocks(RisingFacts? facts)
    {
        if (facts is null)
        {
            yield return new Missing("Trends were not computed: they need at least a baseline of closed jobs with a known component.");
            yield break;
        }

        yield return new Paragraph(facts.Alarms.Count == 0
            ? $"Nothing rose beyond what chance explains. {Shown.Count(facts.SeriesScanned)} series were looked at."
            : $"{Shown.Count(facts.Alarms.Count)} of {Shown.Count(facts.SeriesScanned)} series rose beyond what chance explains.");
        yield return new Paragraph(facts.Rule);
        if (facts.Blind.Length > 0)
        {
            yield return new Missing(facts.Blind);
        }

        for (int i = 0; i < facts.Alarms.Count; i++)
        {
            foreach (IBlock block in Alarm(facts.Alarms[i], i + 1))
            {
                yield return block;
            }
        }
    }

    private static IEnumerable<IBlock> Alarm(RisingAlarm alarm, int number)
    {
        string name = Shown.Words(alarm.Component) + (alarm.Family is null ? ", all families" : $", family {alarm.Family}");
        string since = alarm.Since is { } month ? $" The rise began about {Shown.Month(month)}." : "";
        string chance = alarm.PValue is { } p ? $" By chance alone so many would come in {(p < 0.0001 ? "fewer than 1 month in 10,000" : $"about 1 month in {Shown.Count((long)Math.Round(1 / p))}")}." : "";
        string conclusion = $"{Shown.Count(alarm.Seen)} calls in the month where {Shown.Number(alarm.Expected)} were to be expected ({alarm.Kind}).{chance}{since}";
        yield return new SubHeading($"{number}. {name}");
        if (alarm.Months.Count > 0)
        {
            DateOnly from = alarm.Months[0].Month, to = alarm.Months[^1].Month;
            yield return new MonthlySeries(
                new ChartText($"rising-{number}", $"Calls for {name}", conclusion, $"Diagnosed jobs by month of the call, {Shown.Month(from)} to {Shown.Month(to)}; {Shown.Count((long)alarm.Months.Sum(m => m.Count))} jobs.",
                    $"Bars by month. {conclusion}"),
                "jobs per month", alarm.Months);
        }
        else
        {
            yield return new Paragraph(conclusion);
        }

        yield return new Sheet($"rising-jobs-{number}", $"Jobs behind it: {name}",
            alarm.Jobs.Count > JobsShown ? $"The newest {JobsShown} of {alarm.Jobs.Count} jobs." : $"{alarm.Jobs.Count} jobs.",
            [new("Job"), new("Called on", CellKind.Day), new("Model"), new("Age, years", CellKind.Number), new("Complaint"), new("Part fitted"), new("Supplier")],
            [.. alarm.Jobs.Take(JobsShown).Select(j => (IReadOnlyList<object?>)[j.JobId, j.OpenedOn, j.Model, j.AgeYears, j.Complaint, j.PartNumber, j.Supplier])],
            "The jobs behind this alarm are not listed.");
    }
}
