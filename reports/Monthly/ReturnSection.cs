using PartsSignal.Reports.Charts;
using PartsSignal.Reports.Components;

namespace PartsSignal.Reports.Monthly;

/// <summary>What came back.</summary>
public static class ReturnSection
{
    private const int RowsShown = 12;
    private const int MonthsShown = 13;

    /// <summary>Puts the section together.</summary>
    /// <param name="facts">What is known; null: returns were not computed.</param>
    /// <param name="currency">The shop's currency mark.</param>
    public static Section Build(ReturnFacts? facts, string currency) => new("returns", "What came back", [.. Blocks(facts, currency)]);

    private static IEnumerable<IBlock> Blocks(ReturnFacts? facts, string currency)
    {
        if (facts is null || facts.Components.Count == 0 && facts.Months.Count == 0)
        {
            yield return new Missing("Returns cannot be told: no unit can be followed from one job to the next. It takes a serial number, or a customer and a model, on the jobs.");
            yield break;
        }

        string cost = facts.Cost is { } money ? $" At the shop's own price of a second visit the returns of the last twelve months cost {Format.Money(money, currency)}." : "";
        yield return new Paragraph($"A return is a job on the same unit for the same complaint within {facts.Days} days. {facts.Note}{cost}");
        if (facts.Components.Count > 0)
        {
            yield return Dots(facts);
        }

        yield return new TableView("returns-by-month", "Repairs that came back, by month", "Repairs by the month they were closed; only those watched for the whole window.",
            [new("Month"), new("Repairs", CellKind.Count), new("Came back", CellKind.Count), new("Share (95 %)", CellKind.Share), new("Still watched", CellKind.Count)],
            [.. facts.Months.TakeLast(MonthsShown).Select(m => (IReadOnlyList<object?>)[Format.Month(m.Month), m.Repairs, m.CameBack, m.Share, m.StillWatched])]);
        yield return new TableView("return-jobs", "Returns called in this month", $"{facts.Jobs.Count} jobs.",
            [new("Job", CellKind.Code), new("Called on", CellKind.Day), new("Follows job", CellKind.Code), new("Days", CellKind.Count), new("Complaint"), new("Then it needed"), new("Now it needed")],
            [.. facts.Jobs.Select(j => (IReadOnlyList<object?>)[j.JobId, j.OpenedOn, j.EarlierJobId, j.DaysBetween, j.Complaint, Format.Words(j.EarlierNeed), Format.Words(j.Need)])],
            "No job of this month followed another on the same unit for the same complaint.");
    }

    private static IntervalDots Dots(ReturnFacts facts)
    {
        ReturnRow[] rows = [.. facts.Components.Take(RowsShown)];
        string[] loud = [.. rows.Where(r => r.StandsOut).Select(r => Format.Words(r.Name))];
        string conclusion = loud.Length == 0
            ? "No component comes back clearly more often than the others: the differences may be chance."
            : $"Comes back more often than the rest: {string.Join(", ", loud)}.";
        long repairs = facts.Components.Sum(r => r.Repairs);
        return new IntervalDots(
            new ChartText("returns", $"Share of repairs that came back within {facts.Days} days", conclusion,
                $"{Format.Count(repairs)} repairs watched for {facts.Days} days, by the component fitted.",
                string.Join("; ", rows.Select(r => $"{Format.Words(r.Name)} {Format.Share(r.Share)} of {Format.Count(r.Repairs)}")) + "."),
            "came back, % of repairs", Percent: true,
            [.. rows.Select(r => new IntervalRow(Format.Words(r.Name), r.Share, $"{Format.Count(r.CameBack)} of {Format.Count(r.Repairs)}", r.StandsOut))]);
    }
}
