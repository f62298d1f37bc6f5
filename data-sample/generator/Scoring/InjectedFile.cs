using System.Globalization;
using PartsSignal.SampleShop.Simulation;
using PartsSignal.SampleShop.World;
using PartsSignal.SampleShop.Writing;

namespace PartsSignal.SampleShop.Scoring;

/// <summary>What was put into the world on purpose, with its dates.</summary>
internal static class InjectedFile
{
    public static void Write(string folder)
    {
        using var file = new DelimitedFile(folder, "injected.csv", ',', DelimitedFile.Utf8);
        file.Row("what", "subject", "component", "from", "to", "detail");
        file.Row(
            "bad batch", Faults.BatchFamily, Faults.BatchComponent, Month(Faults.BatchFirst), Month(Faults.BatchLast),
            string.Create(CultureInfo.InvariantCulture,
                $"build months; {Faults.BatchShare:0.00} of the valves live Weibull({Faults.BatchShape:0.0}, {Faults.BatchScaleYears:0.00} years); the rise begins about {Month(Faults.BatchFirst + 11)}"));
        file.Row(
            "supplier fault", Supplier.Second, Faults.PumpComponent, "", "",
            string.Create(CultureInfo.InvariantCulture,
                $"{Faults.PumpEarlyShare:0.00} of the pumps live Weibull({Faults.PumpEarlyShape:0.0}, {Faults.PumpEarlyScaleYears:0.00} years)"));
        file.Row("software change", "job log", "", JobRow.DayText(ShopCalendar.SoftwareChange, "yyyy-MM-dd"), "", "headers, date order, separator, encoding and words change");
        file.Row("double export", LogLayouts.FirstExport.File, "", "2024-03-01", "2024-04-03", "exported 2024-04-06 and again within the year's file");
        file.Row("damaged file", OrderFiles.FirstDamaged, "", "2024-04-01", "2024-06-30", "part numbers changed by a spreadsheet");
        file.Row("mains works", "clogged_screen", "", "2023-04-10", "2023-06-23", "screens clog about three times as often");
        file.Row("mains works", "clogged_screen", "", "2025-09-01", "2025-11-29", "screens clog about three times as often");
    }

    private static string Month(int index) => ShopCalendar.Date(ShopCalendar.MonthStart(index)).ToString("yyyy-MM", CultureInfo.InvariantCulture);
}
