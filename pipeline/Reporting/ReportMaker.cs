using PartsSignal.Analysis.Sql;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Running;
using PartsSignal.Reports.Monthly;

namespace PartsSignal.Pipeline.Reporting;

/// <summary>Makes reports from a session that holds the store and the result tables.</summary>
public static class ReportMaker
{
    /// <summary>Last day the data speaks for; null: there is no job.</summary>
    public static DateOnly? LastDay(Database database, ShopSettings settings) =>
        settings.AsOf ?? database.Read("Report/last_day.sql", r => r.Day(0))[0];

    /// <summary>Writes the reports of some months and the list of months.</summary>
    /// <returns>Paths of the pages.</returns>
    public static IReadOnlyList<string> Write(Database database, ShopSettings settings, OutputFolder output, IReadOnlyList<DateOnly> months, DateOnly asOf)
    {
        IReadOnlyList<(string, string)> card = ModelCardText.Read(output);
        Directory.CreateDirectory(output.Reports);
        string[] pages = [.. months.Select(month =>
        {
            var query = new MonthlyQuery(settings.Shop, settings.Currency, month, asOf, settings.CallbackDays, settings.SecondVisitCost, card);
            return ReportFiles.WriteMonth(output, MonthlyReader.Read(database, query).Report());
        })];
        ReportFiles.WriteIndex(output, database, settings.Shop, asOf);
        return pages;
    }
}
