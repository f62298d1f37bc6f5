using System.Globalization;
using System.Text;
using PartsSignal.Analysis.Sql;
using PartsSignal.Pipeline.Core;
using PartsSignal.Reports.Monthly;

namespace PartsSignal.Pipeline.Reporting;

/// <summary>Writes the files of a monthly report, and the list of months.</summary>
internal static class ReportFiles
{
    private static readonly UTF8Encoding PlainUtf8 = new(encoderShouldEmitUTF8Identifier: false);

    /// <summary>Writes one month: page, summary and workbook.</summary>
    /// <returns>Path of the page.</returns>
    public static string WriteMonth(OutputFolder output, MonthlyReport report)
    {
        string folder = FolderOf(output, report.Month);
        Directory.CreateDirectory(folder);
        File.WriteAllText(Path.Combine(folder, "index.html"), report.Page(), PlainUtf8);
        File.WriteAllText(Path.Combine(folder, "summary.txt"), report.Summary(), PlainUtf8);
        using (FileStream workbook = File.Create(Path.Combine(folder, "tables.xlsx")))
        {
            report.WriteWorkbook(workbook);
        }

        return Path.Combine(folder, "index.html");
    }

    /// <summary>Writes the list of months, with links to the reports that exist.</summary>
    public static void WriteIndex(OutputFolder output, Database database, string shop, DateOnly asOf)
    {
        IReadOnlyList<IndexedMonth> months = [.. MonthIndex.Read(database).Select(m => m with { Written = output.HasReport(NameOf(m.Month)) })];
        File.WriteAllText(Path.Combine(output.Reports, "index.html"), MonthIndex.Render(shop, asOf, months), PlainUtf8);
    }

    private static string FolderOf(OutputFolder output, DateOnly month) => Path.Combine(output.Reports, NameOf(month));

    private static string NameOf(DateOnly month) => month.ToString("yyyy-MM", CultureInfo.InvariantCulture);
}
