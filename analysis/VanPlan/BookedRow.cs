using PartsSignal.Analysis.Prediction;

namespace PartsSignal.Analysis.VanPlan;

/// <summary>A part a booked job may need, beside what the plan and the count have of it.</summary>
/// <param name="Van">The van.</param>
/// <param name="JobId">The job.</param>
/// <param name="OpenedOn">Day of the call.</param>
/// <param name="ApplianceType">Appliance.</param>
/// <param name="ComplaintKind">Complaint.</param>
/// <param name="Need">Component.</param>
/// <param name="PartNumber">Current number.</param>
/// <param name="Quantity">Pieces.</param>
/// <param name="Chance">Chance that the job needs it, 0 to 1.</param>
/// <param name="Planned">Pieces in the plan.</param>
/// <param name="Aboard">Pieces counted, or null if the van was not counted.</param>
/// <param name="TakeAlong">Pieces to take along for this call beyond the load: bringing them pays, and the load or an earlier call leaves too few.</param>
public sealed record BookedRow(
    string Van, string JobId, DateOnly OpenedOn, string ApplianceType, string ComplaintKind, string Need, string PartNumber, int Quantity,
    double Chance, int Planned, int? Aboard, int TakeAlong)
{
    /// <summary>All parts of all booked jobs, by van, call and chance.</summary>
    public static IReadOnlyList<BookedRow> From(
        BookedJobs booked, IReadOnlyList<PlannedVan> plans, Func<PlannedVan, IReadOnlyList<int>?> aboard)
    {
        Dictionary<string, BookedNeed> of = booked.Needs.ToDictionary(n => n.JobId, StringComparer.Ordinal);
        var rows = new List<BookedRow>();
        foreach (PlannedVan plan in plans)
        {
            IReadOnlyList<int>? counted = aboard(plan);
            var asked = new Dictionary<string, int>(StringComparer.Ordinal);
            foreach (BookedCall call in booked.Calls.Where(c => c.Van == plan.Van.Van && of.ContainsKey(c.JobId)))
            {
                rows.AddRange(of[call.JobId].Parts.Select(p => (Part: p, At: plan.View.IndexOf(p.PartNumber))).Select(p => new BookedRow(
                    plan.Van.Van, call.JobId, call.OpenedOn, call.Call.ApplianceType, call.Call.ComplaintKind, p.Part.Need, p.Part.PartNumber,
                    p.Part.Quantity, p.Part.Chance, p.At < 0 ? 0 : plan.Target[p.At], counted is null ? null : p.At < 0 ? 0 : counted[p.At],
                    p.Part.Bring ? Short(asked, p.Part, p.At < 0 ? 0 : plan.Target[p.At]) : 0)));
            }
        }

        return rows;
    }

    /// <summary>Pieces the load lacks once the calls before have had theirs.</summary>
    private static int Short(Dictionary<string, int> asked, BookedPart part, int planned)
    {
        int before = asked.GetValueOrDefault(part.PartNumber), with = before + part.Quantity;
        asked[part.PartNumber] = with;
        return Math.Max(0, with - planned) - Math.Max(0, before - planned);
    }
}
