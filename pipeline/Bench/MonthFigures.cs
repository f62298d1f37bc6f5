using System.Globalization;
using CsvHelper;
using PartsSignal.Analysis.Vocabulary;
using PartsSignal.Pipeline.Core;

namespace PartsSignal.Pipeline.Bench;

/// <summary>A share with the range it very likely lies in, 0 to 1; null where it is unknown.</summary>
internal sealed record MonthShare(double? Value, double? Lower, double? Upper);

/// <summary>What happened in one month.</summary>
/// <param name="Month">The month, <c>2026-03</c>.</param>
/// <param name="Calls">Calls that came in.</param>
/// <param name="StillOpen">Of those, still open.</param>
/// <param name="FirstVisit">Share finished at the first visit.</param>
/// <param name="NoPart">Share that needed no part.</param>
/// <param name="Needs">What the calls needed, with the number of calls.</param>
internal sealed record MonthFigures(string Month, long Calls, long StillOpen, MonthShare FirstVisit, MonthShare NoPart, IReadOnlyDictionary<string, long> Needs)
{
    /// <summary>The file they are read from.</summary>
    /// <param name="results">Folder of the result tables.</param>
    public static string PathIn(string results) => Path.Combine(results, "month_figures.csv");

    /// <summary>All months of the last update, oldest first.</summary>
    /// <param name="results">Folder of the result tables.</param>
    public static IReadOnlyList<MonthFigures> All(string results)
    {
        ILookup<string, (string Need, long Calls)> needs = ResultCsv.Read(Path.Combine(results, "month_needs.csv"), csv => (Month: MonthOf(csv), Need: csv.GetString("need"), Calls: Whole(csv, "calls")))
            .Where(n => n.Need != Need.NoPart).ToLookup(n => n.Month, n => (PageText.Need(n.Need), n.Calls), StringComparer.Ordinal);
        return ResultCsv.Read(PathIn(results), csv => new MonthFigures(
            MonthOf(csv), Whole(csv, "calls"), Whole(csv, "still_open"), Share(csv, "first_visit"), Share(csv, "no_part"),
            needs[MonthOf(csv)].ToDictionary(n => n.Need, n => n.Calls, StringComparer.Ordinal)));
    }

    private static string MonthOf(CsvReader csv) => csv.GetString("month")[..7];

    private static long Whole(CsvReader csv, string column) => long.Parse(csv.GetString(column), CultureInfo.InvariantCulture);

    private static MonthShare Share(CsvReader csv, string name) => new(Part(csv, name + "_share"), Part(csv, name + "_lower"), Part(csv, name + "_upper"));

    private static double? Part(CsvReader csv, string column) => double.TryParse(csv.GetString(column), NumberStyles.Float, CultureInfo.InvariantCulture, out double value) ? value : null;
}
