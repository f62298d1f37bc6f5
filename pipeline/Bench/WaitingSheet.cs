using System.Globalization;
using CsvHelper;
using PartsSignal.Pipeline.Core;

namespace PartsSignal.Pipeline.Bench;

/// <summary>A part that a waiting call may need.</summary>
/// <param name="Need">What it is for, such as <c>inlet valve</c>.</param>
/// <param name="PartNumber">The part.</param>
/// <param name="Quantity">How many the call would need.</param>
/// <param name="Chance">How likely the call needs it, 0 to 1.</param>
/// <param name="Planned">How many the planned load has.</param>
/// <param name="Aboard">How many were counted on the van, or null if the van was not counted.</param>
/// <param name="TakeAlong">How many to take beyond the planned load, because it has too few and bringing them pays.</param>
internal sealed record WaitingPart(string Need, string PartNumber, int Quantity, double Chance, int Planned, int? Aboard, int TakeAlong)
{
    /// <summary>Where the technician has it from, or null: the van does not have it, and bringing it does not pay at these odds.</summary>
    public string? From => TakeAlong > 0 ? "☐ Take " + TakeAlong.ToString(CultureInfo.InvariantCulture)
        : Aboard >= Quantity ? "On the van"
        : Planned >= Quantity ? "In the planned load"
        : null;
}

/// <summary>A call that waits for its first visit.</summary>
/// <param name="Job">Number of the job.</param>
/// <param name="CalledOn">Day of the call.</param>
/// <param name="What">Appliance and complaint in words.</param>
/// <param name="Parts">Parts it may need, the likeliest first; never empty.</param>
internal sealed record WaitingCall(string Job, DateOnly CalledOn, string What, IReadOnlyList<WaitingPart> Parts);

/// <summary>Parts for the waiting calls of one van: those it has or should have, and those to take beside its planned load.</summary>
/// <param name="Van">The van.</param>
/// <param name="Calls">The waiting calls that may need such a part, the oldest first.</param>
internal sealed record WaitingSheet(string Van, IReadOnlyList<WaitingCall> Calls)
{
    private const string FileName = "van_booked.csv";

    /// <summary>A sheet per van, from the last update.</summary>
    /// <param name="results">Folder of the result tables.</param>
    public static IReadOnlyList<WaitingSheet> All(string results) =>
        [.. ResultCsv.Read(Path.Combine(results, FileName), Read).Where(r => r.Part.From is not null).GroupBy(r => r.Van)
            .Select(v => new WaitingSheet(v.Key, [.. v.GroupBy(r => r.Job).Select(Call).OrderBy(j => j.CalledOn).ThenBy(j => j.Job, StringComparer.Ordinal)]))];

    private static WaitingCall Call(IGrouping<string, Row> rows)
    {
        Row first = rows.First();
        string type = first.Type == Analysis.Prediction.Call.Unknown ? "" : PageText.Words(first.Type);
        return new WaitingCall(rows.Key, first.CalledOn, string.Join(", ", new[] { type, PageText.Complaint(first.Complaint) }.Where(t => t.Length > 0)), [.. rows.Select(r => r.Part).OrderByDescending(p => p.Chance)]);
    }

    private static Row Read(CsvReader csv) => new(
        csv.GetString("van"), csv.GetString("job_id"), DateOnly.ParseExact(csv.GetString("opened_on"), "yyyy-MM-dd", CultureInfo.InvariantCulture), csv.GetString("appliance_type"), csv.GetString("complaint_kind"),
        new WaitingPart(
            PageText.Need(csv.GetString("need")), csv.GetString("part_number"), Whole(csv, "quantity"), double.Parse(csv.GetString("chance"), CultureInfo.InvariantCulture),
            Whole(csv, "planned"), csv.GetString("aboard").Length == 0 ? null : Whole(csv, "aboard"), Whole(csv, "take_along")));

    private static int Whole(CsvReader csv, string column) => int.Parse(csv.GetString(column), CultureInfo.InvariantCulture);

    private sealed record Row(string Van, string Job, DateOnly CalledOn, string Type, string Complaint, WaitingPart Part);
}
