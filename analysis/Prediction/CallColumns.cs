using System.Data.Common;
using PartsSignal.Analysis.Sql;

namespace PartsSignal.Analysis.Prediction;

/// <summary>The columns of a call, in the one order all queries over calls give them.</summary>
internal static class CallColumns
{
    /// <summary>Reads a call: appliance type, brand, model, family, age, its basis, complaint text, kind, error code, customer, earlier visits.</summary>
    /// <param name="r">The row.</param>
    /// <param name="at">Position of the appliance type.</param>
    /// <param name="opened">Day of the call.</param>
    public static Call Read(DbDataReader r, int at, DateOnly opened)
    {
        double? age = r.Double(at + 4) is >= 0 and { } years ? years : null;
        string basis = r.Text(at + 5) ?? Call.Unknown;
        return new Call
        {
            ApplianceType = r.Text(at) ?? Call.Unknown,
            Brand = r.Text(at + 1),
            ModelNumber = r.Text(at + 2),
            ModelFamily = r.Text(at + 3),
            AgeYears = age,
            AgeBasis = basis,
            MadeOn = Call.BuiltOn(opened, age, basis),
            ComplaintText = r.Text(at + 6),
            ComplaintKind = r.GetString(at + 7),
            ErrorCode = r.Text(at + 8),
            CustomerKind = r.Text(at + 9) ?? Call.Unknown,
            Month = opened.Month,
            Earlier = EarlierVisit.Parse(r.Text(at + 10)),
        };
    }
}
