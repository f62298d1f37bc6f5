using System.Globalization;
using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Statistics;
using PartsSignal.Reports.Charts;
using PartsSignal.Reports.Components;

namespace PartsSignal.Reports.Monthly;

/// <summary>Which repairs came back.</summary>
/// <param name="Days">Days within which a return counts.</param>
/// <param name="Months">Share that came back by month of closing, oldest first.</param>
/// <param name="Components">Share that came back by component fitted, most returns first.</param>
/// <param name="Jobs">Jobs of the month that were returns.</param>
/// <param name="Cost">What the returns of the last twelve months cost at the price of a second visit, or null if not known.</param>
/// <param name="Note">What the shares leave out, in words.</param>
internal sealed record ReturnFacts(
    int Days, IReadOnlyList<ReturnMonth> Months, IReadOnlyList<ReturnRow> Components, IReadOnlyList<ReturnJob> Jobs, decimal? Cost, string Note)
{
    /// <summary>The price of a second visit that <see cref="Cost"/> assumes because the shop gave none, or null if the shop gave it.</summary>
    public decimal? AssumedPrice { get; init; }
}

/// <summary>Repairs closed in one month, and how many came back.</summary>
/// <param name="Month">First day of the month.</param>
/// <param name="Repairs">Repairs watched for the whole window.</param>
/// <param name="CameBack">Of those, came back.</param>
/// <param name="Share">Their share.</param>
/// <param name="StillWatched">Repairs whose window has not passed yet.</param>
internal sealed record ReturnMonth(DateOnly Month, long Repairs, long CameBack, Estimate Share, long StillWatched = 0);

/// <summary>Repairs of one component, and how many came back.</summary>
internal sealed record ReturnRow(string Name, long Repairs, long CameBack, Estimate Share, bool StandsOut = false);

/// <summary>A job that followed another on the same unit for the same complaint.</summary>
internal sealed record ReturnJob(string JobId, DateOnly OpenedOn, string EarlierJobId, int DaysAfter, string? ComplaintText, string? EarlierComponent, string? Component);

/// <summary>What came back.</summary>
internal static class ReturnSection
{
    // Two years, so that the same month a year earlier can stand beside a headline.
    private const int MonthsKept = 25;
    private const int MonthsShown = 13;
    private const int RowsDrawn = 12;

    private sealed record Group(string GroupKind, string Member, long Repairs, long Callbacks, Estimate Share, long NotFollowed, bool StandsOut);

    /// <summary>Returns up to the month asked for; null if they were not computed.</summary>
    public static ReturnFacts? Read(Database database, MonthlyOptions options)
    {
        if (!database.Has("callback_shares") || !database.Has("callbacks"))
        {
            return null;
        }

        IReadOnlyList<Group> groups = database.Read<Group>("queries/report/callback_shares.sql", ("days", options.CallbackDays));
        double? all = groups.FirstOrDefault(g => g.GroupKind == "all")?.Share.Value;
        ReturnMonth[] months = [.. groups.Where(g => g.GroupKind == "month" && g.Repairs > 0)
            .Select(g => new ReturnMonth(DateOnly.Parse(g.Member, CultureInfo.InvariantCulture), g.Repairs, g.Callbacks, g.Share, g.NotFollowed))
            .Where(m => m.Month <= options.Month).OrderBy(m => m.Month)];
        string overall = all is { } share ? $"Over all months {Format.Percent(share)} came back. " : "";
        return new ReturnFacts(
            options.CallbackDays, [.. months.TakeLast(MonthsKept)],
            [.. groups.Where(g => g.GroupKind == "component" && g.Repairs > 0)
                .Select(g => new ReturnRow(g.Member, g.Repairs, g.Callbacks, g.Share, g.StandsOut))],
            database.Read<ReturnJob>("queries/report/callback_jobs.sql", ("month", options.Month)),
            months.Length == 0 ? null : months.TakeLast(12).Sum(m => m.CameBack) * options.SecondVisitCost,
            overall + "Repairs on units that cannot be followed are left out, and customers who called another shop leave no trace, so the shares are lower bounds. "
            + "A part is named only if it comes back clearly more often than all other parts together. We allow for how many parts are compared, but about one in ten named may still be chance.")
        {
            AssumedPrice = options.SecondVisitCostAssumed ? options.SecondVisitCost : null,
        };
    }

    /// <param name="facts">What is known, or null if returns were not computed.</param>
    /// <param name="currency">The shop's currency.</param>
    public static Section Build(ReturnFacts? facts, string currency) => new("returns", "What came back", [.. Blocks(facts, currency)]);

    private static IEnumerable<IBlock> Blocks(ReturnFacts? facts, string currency)
    {
        if (facts is null || facts.Components.Count == 0 && facts.Months.Count == 0)
        {
            yield return new Missing("Returns are not known: no unit can be followed from one job to the next. It takes a serial number, or a customer and a model, on the jobs.");
            yield break;
        }

        yield return new Paragraph($"A return is a job on the same unit for the same complaint within {facts.Days} days. {facts.Note}{Cost(facts, currency)}");
        if (facts.Components.Count > 0)
        {
            yield return Dots(facts);
        }

        yield return TableView.Create("returns-by-month", "Repairs that came back, by month", "Repairs by the month they were closed; only those watched for the whole window.",
            facts.Months.TakeLast(MonthsShown),
            [
                new("Month", m => Format.Month(m.Month)), new("Repairs", m => m.Repairs, CellKind.Count), new("Came back", m => m.CameBack, CellKind.Count),
                new("Share (95 %)", m => m.Share, CellKind.Share),
                .. facts.Months.TakeLast(MonthsShown).Any(m => m.StillWatched > 0)
                    ? [new RecordColumn<ReturnMonth>($"{facts.Days} days not over yet", m => m.StillWatched, CellKind.Count)]
                    : Array.Empty<RecordColumn<ReturnMonth>>(),
            ]);
        yield return TableView.Create("return-jobs", "Returns called in this month", $"{facts.Jobs.Count} {(facts.Jobs.Count == 1 ? "job" : "jobs")}.", facts.Jobs,
            [
                new("Job", j => j.JobId, CellKind.Code), new("Called on", j => j.OpenedOn, CellKind.Day), new("Follows job", j => j.EarlierJobId, CellKind.Code),
                new("Days", j => j.DaysAfter, CellKind.Count), new("Complaint", j => j.ComplaintText), new("Then it needed", j => Format.Words(j.EarlierComponent)),
                new("Now it needed", j => Format.Words(j.Component)),
            ]) with
        {
            WhenEmpty = "No job of this month followed another on the same unit for the same complaint.",
        };
    }

    private static string Cost(ReturnFacts facts, string currency) => (facts.Cost, facts.AssumedPrice) switch
    {
        (not > 0, _) => "",
        ({ } cost, { } assumed) => $" If a second visit costs {MoneyFormat.Text(assumed, currency)}, the returns of the last twelve months cost {MoneyFormat.Text(cost, currency)}. That price is this program's assumption: give yours in the settings.",
        ({ } cost, null) => $" At your price of a second visit, the returns of the last twelve months cost {MoneyFormat.Text(cost, currency)}.",
    };

    private static IntervalDots Dots(ReturnFacts facts)
    {
        ReturnRow[] rows = [.. facts.Components.Take(RowsDrawn)];
        string[] loud = [.. rows.Where(r => r.StandsOut).Select(r => Format.Words(r.Name))];
        string conclusion = loud.Length == 0
            ? "No part comes back clearly more often than the others: the differences may be chance."
            : $"Comes back more often than the rest: {string.Join(", ", loud)}.";
        return new IntervalDots(
            new ChartText("returns", $"Share of repairs that came back within {facts.Days} days", conclusion,
                $"{Format.Count(facts.Components.Sum(r => r.Repairs))} repairs watched for {facts.Days} days, by the component fitted.",
                string.Join("; ", rows.Select(r => $"{Format.Words(r.Name)} {Format.Share(r.Share)} of {Format.Count(r.Repairs)}")) + "."),
            "came back, % of repairs", Percent: true,
            [.. rows.Select(r => new IntervalRow(Format.Words(r.Name), r.Share, $"{Format.Count(r.CameBack)} of {Format.Count(r.Repairs)}", r.StandsOut))]);
    }
}
