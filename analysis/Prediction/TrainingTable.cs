using PartsSignal.Analysis.Sql;

namespace PartsSignal.Analysis.Prediction;

/// <summary>The closed jobs of a store, as calls with their answers.</summary>
public static class TrainingTable
{
    /// <summary>Most jobs that are learned from. More would not be learned better, and learning takes time and memory in proportion.</summary>
    public const int MostJobs = 100_000;

    /// <summary>
    /// Closed jobs whose need is known, by day of the call, then job number: all of them, or those of a share of the
    /// appliances that comes to about the most wanted. The same store gives the same jobs.
    /// </summary>
    /// <param name="database">A session over the store.</param>
    /// <param name="most">Most jobs wanted, more or less.</param>
    public static IReadOnlyList<ClosedCall> Read(Database database, int most = MostJobs) =>
        [.. database.Read<CallRow>("queries/prediction/calls.sql", ("is_open", false), ("most", most))
            .Select(r => new ClosedCall(r.JobId, r.OpenedOn, r.ClosedOn!.Value, r.UnitId, r.MainComponent!, r.Call()))];
}

/// <summary>A call whose answer is known.</summary>
/// <param name="JobId">The job.</param>
/// <param name="OpenedOn">Day of the call.</param>
/// <param name="ClosedOn">Day the answer was known; nothing before that day may learn from it.</param>
/// <param name="UnitId">The appliance, or null if not known.</param>
/// <param name="Need">What it needed: a component, <c>none</c> or <c>other_part</c>.</param>
/// <param name="Call">What was known at booking.</param>
public sealed record ClosedCall(string JobId, DateOnly OpenedOn, DateOnly ClosedOn, string? UnitId, string Need, Call Call);

/// <summary>A job that is still open.</summary>
/// <param name="JobId">The job.</param>
/// <param name="OpenedOn">Day of the call.</param>
/// <param name="Van">Van it is booked for, or null if not given.</param>
/// <param name="Outcome">What the log says so far, for example <c>part_ordered</c>: the first visit is over then.</param>
/// <param name="Call">What was known at booking.</param>
public sealed record BookedCall(string JobId, DateOnly OpenedOn, string? Van, string Outcome, Call Call)
{
    /// <summary>True when somebody has been there: the first visit is over.</summary>
    public bool IsVisited { get; init; }

    /// <summary>Day a part was ordered for it, or null if none was.</summary>
    public DateOnly? PartOrderedOn { get; init; }
}

/// <summary>The open jobs of a store, as calls a predictor can answer.</summary>
public static class BookedCalls
{
    /// <summary>All open jobs, by day of the call, then job number. What was known at booking is read as it is for learning.</summary>
    public static IReadOnlyList<BookedCall> Read(Database database)
    {
        var booked = database.Read<Booked>("queries/prediction/booked_jobs.sql").ToDictionary(b => b.JobId, StringComparer.Ordinal);
        return [.. database.Read<CallRow>("queries/prediction/calls.sql", ("is_open", true), ("most", null))
            .Select(r => new BookedCall(r.JobId, r.OpenedOn, booked[r.JobId].Van, booked[r.JobId].Outcome, r.Call())
            {
                IsVisited = booked[r.JobId].IsVisited,
                PartOrderedOn = booked[r.JobId].PartOrderedOn,
            })];
    }

    private sealed record Booked(string JobId, string? Van, string Outcome, bool IsVisited, DateOnly? PartOrderedOn);
}

/// <summary>A row of <c>queries/prediction/calls.sql</c>: a job as booked, and what became of it.</summary>
internal sealed record CallRow(
    string JobId, DateOnly OpenedOn, DateOnly? ClosedOn, string? UnitId, string? MainComponent, string? ApplianceType, string? Brand, string? ModelNumber,
    string? ModelFamily, double? AgeYears, string? AgeBasis, string? ComplaintText, string ComplaintKind, string? ErrorCode, string? CustomerKind, string? Visits)
{
    /// <summary>What was known when it was booked.</summary>
    public Call Call() => new Call
    {
        ApplianceType = ApplianceType ?? Prediction.Call.Unknown,
        Brand = Brand,
        ModelNumber = ModelNumber,
        ModelFamily = ModelFamily,
        AgeYears = AgeYears,
        AgeBasis = AgeBasis ?? Prediction.Call.Unknown,
        ComplaintText = ComplaintText,
        ComplaintKind = ComplaintKind,
        ErrorCode = ErrorCode,
        CustomerKind = CustomerKind ?? Prediction.Call.Unknown,
        Earlier = EarlierVisit.Parse(Visits),
    }.On(OpenedOn);
}
