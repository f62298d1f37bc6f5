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
    public static IReadOnlyList<ClosedCall> Read(Database database, int most = MostJobs) => database.Read("queries/prediction/calls.sql", r =>
    {
        DateOnly opened = r.Day(1)!.Value;
        return new ClosedCall(r.GetString(0), opened, r.Day(2)!.Value, r.Text(3), r.GetString(4), CallColumns.Read(r, 5, opened));
    }, ("is_open", false), ("most", most));
}
