using PartsSignal.Analysis.Sql;

namespace PartsSignal.Analysis.Prediction;

/// <summary>A job that is still open.</summary>
/// <param name="JobId">The job.</param>
/// <param name="OpenedOn">Day of the call.</param>
/// <param name="Van">Van it is booked for; null: not told.</param>
/// <param name="Outcome">What the log says so far, for example <c>part_ordered</c>: the first visit is over then.</param>
/// <param name="Call">What was known at booking.</param>
public sealed record BookedCall(string JobId, DateOnly OpenedOn, string? Van, string Outcome, Call Call);

/// <summary>The open jobs of a store, as calls a predictor can answer.</summary>
public static class BookedCalls
{
    /// <summary>All open jobs, by day of the call, then job number. What was known at booking is read as it is for learning.</summary>
    public static IReadOnlyList<BookedCall> Read(Database database)
    {
        var booked = database.Read<Booked>("queries/prediction/booked_jobs.sql").ToDictionary(b => b.JobId, StringComparer.Ordinal);
        return [.. database.Read<CallRow>("queries/prediction/calls.sql", ("is_open", true), ("most", null))
            .Select(r => new BookedCall(r.JobId, r.OpenedOn, booked[r.JobId].Van, booked[r.JobId].Outcome, r.Call()))];
    }

    private sealed record Booked(string JobId, string? Van, string Outcome);
}
