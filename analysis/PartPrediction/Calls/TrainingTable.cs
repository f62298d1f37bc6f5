using System.Data.Common;
using PartsSignal.Analysis.Sql;

namespace PartsSignal.Analysis.PartPrediction.Calls;

/// <summary>The closed jobs of a store, as calls with their answers.</summary>
public static class TrainingTable
{
    /// <summary>All closed jobs whose need is known, by day of the call, then job number.</summary>
    public static IReadOnlyList<ClosedCall> Read(Database database) => database.Read("Prediction/training_jobs.sql", Row);

    private static ClosedCall Row(DbDataReader r)
    {
        DateOnly opened = r.Day(1)!.Value;
        double? age = r.Double(9) is >= 0 and { } years ? years : null;
        string basis = r.Text(10) ?? Call.Unknown;
        return new ClosedCall(r.GetString(0), opened, r.Day(2)!.Value, r.Text(3), r.GetString(4), new Call
        {
            ApplianceType = r.Text(5) ?? Call.Unknown,
            Brand = r.Text(6),
            ModelNumber = r.Text(7),
            ModelFamily = r.Text(8),
            AgeYears = age,
            AgeBasis = basis,
            MadeOn = Call.BuiltOn(opened, age, basis),
            ComplaintText = r.Text(11),
            ComplaintKind = r.GetString(12),
            ErrorCode = r.Text(13),
            CustomerKind = r.Text(14) ?? Call.Unknown,
            Month = opened.Month,
            Earlier = EarlierVisit.Parse(r.Text(15)),
        });
    }
}
