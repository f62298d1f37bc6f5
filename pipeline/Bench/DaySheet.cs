using System.Globalization;
using CsvHelper;

namespace PartsSignal.Pipeline.Bench;

/// <summary>A part that a waiting job may need.</summary>
/// <param name="Need">What it is for, such as <c>inlet valve</c>.</param>
/// <param name="PartNumber">The part, or empty if no number is known.</param>
/// <param name="Quantity">How many the job would need.</param>
/// <param name="Chance">How likely the job needs it, 0 to 1.</param>
/// <param name="TakeAlong">How many to take from the shelf, because the van has too few.</param>
internal sealed record DayPart(string Need, string PartNumber, string Quantity, double Chance, int TakeAlong);

/// <summary>A job that waits for its first visit.</summary>
/// <param name="Job">Its number.</param>
/// <param name="CalledOn">Day of the call.</param>
/// <param name="What">Appliance and complaint in words.</param>
/// <param name="Parts">Parts it may need, the likeliest first.</param>
internal sealed record DayJob(string Job, DateOnly CalledOn, string What, IReadOnlyList<DayPart> Parts);

/// <summary>What a technician takes along for the jobs that wait: beside the van's usual load.</summary>
/// <param name="Van">The van.</param>
/// <param name="Jobs">Its waiting jobs, the oldest first.</param>
internal sealed record DaySheet(string Van, IReadOnlyList<DayJob> Jobs)
{
    private const string FileName = "van_booked.csv";

    /// <summary>A sheet per van, from the last update.</summary>
    /// <param name="results">Folder of the result tables.</param>
    public static IReadOnlyList<DaySheet> All(string results)
    {
        string path = Path.Combine(results, FileName);
        return !File.Exists(path) ? [] :
            [.. Rows(path).GroupBy(r => r.Van).Select(v => new DaySheet(v.Key, [.. v.GroupBy(r => r.Job).Select(Job).OrderBy(j => j.CalledOn).ThenBy(j => j.Job, StringComparer.Ordinal)]))];
    }

    private static DayJob Job(IGrouping<string, Row> rows)
    {
        Row first = rows.First();
        string what = string.Join(", ", new[] { first.Type, first.Complaint }.Where(t => t.Length > 0).Select(Plain));
        return new DayJob(rows.Key, first.CalledOn, what, [.. rows.Where(r => r.Part.Need.Length > 0).Select(r => r.Part).OrderByDescending(p => p.Chance)]);
    }

    private static List<Row> Rows(string path)
    {
        using var csv = CsvReader.FromFile(path, new CsvReaderOptions { Separator = ',' });
        csv.ReadHeader();
        var rows = new List<Row>();
        while (csv.Read())
        {
            var part = new DayPart(Plain(csv.GetString("need")), csv.GetString("part_number"), csv.GetString("quantity"), Number(csv.GetString("chance")), (int)Number(csv.GetString("take_along")));
            rows.Add(new Row(csv.GetString("van"), csv.GetString("job_id"), DateOnly.ParseExact(csv.GetString("opened_on"), "yyyy-MM-dd", CultureInfo.InvariantCulture), csv.GetString("appliance_type"), csv.GetString("complaint_kind"), part));
        }

        return rows;
    }

    private static double Number(string text) => double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double number) ? number : 0;

    private static string Plain(string name) => name.Replace('_', ' ');

    private sealed record Row(string Van, string Job, DateOnly CalledOn, string Type, string Complaint, DayPart Part);
}
