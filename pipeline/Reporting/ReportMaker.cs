using PartsSignal.Analysis.Sql;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Running;
using PartsSignal.Reports.Monthly;

namespace PartsSignal.Pipeline.Reporting;

/// <summary>Writes the report of the newest complete month with calls, and the list of months. Runs after all result tables.</summary>
internal sealed class ReportStep : IRunStep
{
    /// <inheritdoc/>
    public string Name => "report";

    /// <inheritdoc/>
    public Task<long> RunAsync(RunContext context, CancellationToken cancellation)
    {
        DateOnly asOf = ReportMaker.LastDay(context.Database, context.Settings) ?? DateOnly.FromDateTime(context.Clock.GetUtcNow().UtcDateTime);
        DateOnly month = ReportMonths.NewestWithCalls(MonthIndex.Read(context.Database), asOf);
        IReadOnlyList<string> pages = ReportMaker.Write(context.Database, context.Settings, context.Output, context.Output, [month], asOf);
        context.Record["report"] = pages[0];
        context.State.FillInFirst = MonthlyReport.FillInFirst(context.Database);
        return Task.FromResult((long)pages.Count);
    }
}

/// <summary>Writes reports from a session with the store and the result tables.</summary>
internal static class ReportMaker
{
    /// <summary>Last day covered by the data, or null if there are no jobs.</summary>
    public static DateOnly? LastDay(Database database, ShopSettings settings) =>
        LogWindow.LastDay(database, settings.AsOf);

    /// <summary>Writes the reports of some months and the list of months.</summary>
    /// <param name="database">The session.</param>
    /// <param name="settings">What <c>shop.json</c> says.</param>
    /// <param name="model">Folder with the model card.</param>
    /// <param name="output">Folder for the reports.</param>
    /// <param name="months">First day of each month to report.</param>
    /// <param name="asOf">Last day covered by the data.</param>
    /// <returns>Paths of the pages, as published.</returns>
    public static IReadOnlyList<string> Write(
        Database database, ShopSettings settings, OutputFolder model, OutputFolder output, IReadOnlyList<DateOnly> months, DateOnly asOf)
    {
        IReadOnlyList<(string, string)> card = ModelCardText.Read(model);
        Directory.CreateDirectory(output.Reports);
        string[] pages = [.. months.Select(month =>
        {
            var options = new MonthlyOptions(settings.Shop, settings.Currency, month, asOf, settings.CallbackDays, settings.SecondVisitCost, card) { SecondVisitCostAssumed = !settings.SecondVisitCostGiven };
            return output.AsPublished(ReportFiles.WriteMonth(output, MonthlyReport.Read(database, options)));
        })];
        ReportFiles.WriteIndex(output, database, settings.Shop, asOf);
        return pages;
    }
}

/// <summary>The default month of a report.</summary>
internal static class ReportMonths
{
    /// <summary>The last month complete by the last day of the data.</summary>
    public static DateOnly Last(DateOnly asOf)
    {
        var first = new DateOnly(asOf.Year, asOf.Month, 1);
        return asOf.AddDays(1).Day == 1 ? first : first.AddMonths(-1);
    }

    /// <summary>The newest complete month with calls, or the last complete month if none has calls.</summary>
    /// <param name="months">Months with their number of calls.</param>
    /// <param name="asOf">Last day covered by the data.</param>
    public static DateOnly NewestWithCalls(IEnumerable<IndexedMonth> months, DateOnly asOf)
    {
        DateOnly last = Last(asOf);
        return months.Where(m => m.Calls > 0 && m.Month <= last).Select(m => m.Month).DefaultIfEmpty(last).Max();
    }
}
