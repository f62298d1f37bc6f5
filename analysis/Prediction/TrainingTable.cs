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
