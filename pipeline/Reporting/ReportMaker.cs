using PartsSignal.Analysis.Sql;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Reports.Monthly;

namespace PartsSignal.Pipeline.Reporting;

/// <summary>Makes reports from a session that holds the store and the result tables.</summary>
internal static class ReportMaker
{
    /// <summary>Last day the data speaks for; null: there is no job.</summary>
    public static DateOnly? LastDay(Database database, ShopSettings settings) =>
        LogWindow.LastDay(database, settings.AsOf);

    /// <summary>Writes the reports of some months and the list of months.</summary>
    /// <param name="database">The session.</param>
    /// <param name="settings">What <c>shop.json</c> says.</param>
    /// <param name="model">Where the model card lies.</param>
    /// <param name="output">Where the reports go.</param>
    /// <param name="months">Their first days.</param>
    /// <param name="asOf">Last day the data speaks for.</param>
    /// <returns>Paths of the pages, as published.</returns>
    public static IReadOnlyList<string> Write(
        Database database, ShopSettings settings, OutputFolder model, OutputFolder output, IReadOnlyList<DateOnly> months, DateOnly asOf)
    {
        IReadOnlyList<(string, string)> card = ModelCardText.Read(model);
        Directory.CreateDirectory(output.Reports);
        string[] pages = [.. months.Select(month =>
        {
            var options = new MonthlyOptions(settings.Shop, settings.Currency, month, asOf, settings.CallbackDays, settings.SecondVisitCost, card);
            return output.AsPublished(ReportFiles.WriteMonth(output, MonthlyReport.Read(database, options)));
        })];
        ReportFiles.WriteIndex(output, database, settings.Shop, asOf);
        return pages;
    }
}
