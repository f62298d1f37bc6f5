using PartsSignal.Analysis.Sql;

namespace PartsSignal.Analysis.PartPrediction.Calls;

/// <summary>The closed jobs of a store, as calls with their answers.</summary>
public static class TrainingTable
{
    /// <summary>All closed jobs whose need is known, by day of the call, then job number.</summary>
    public static IReadOnlyList<ClosedCall> Read(Database database) => database.Read("Prediction/training_jobs.sql", r =>
    {
        DateOnly opened = r.Day(1)!.Value;
        return new ClosedCall(r.GetString(0), opened, r.Day(2)!.Value, r.Text(3), r.GetString(4), CallColumns.Read(r, 5, opened));
    });
}
