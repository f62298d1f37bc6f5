using PartsSignal.Analysis.PartPrediction.Calls;
using PartsSignal.Analysis.Sql;

namespace PartsSignal.Analysis.VanPlan.Booked;

/// <summary>A job that is booked and not yet seen.</summary>
/// <param name="JobId">Its number.</param>
/// <param name="Van">Van that will serve it.</param>
/// <param name="OpenedOn">Day of the call.</param>
/// <param name="Call">What the office knows.</param>
public sealed record BookedCall(string JobId, string Van, DateOnly OpenedOn, Call Call)
{
    /// <summary>A call left open for longer than this many days is taken as forgotten, not as still to come.</summary>
    public const int LongestWait = 30;

    /// <summary>Jobs booked and not yet seen on the evening of a day; nothing later than that day has a part in it.</summary>
    public static IReadOnlyList<BookedCall> Read(Database database, DateOnly day) => database.Read(
        "Van/booked_calls.sql",
        r =>
        {
            DateOnly opened = r.Day(2)!.Value;
            double? age = r.Double(7) is >= 0 and { } years ? years : null;
            string basis = r.Text(8) ?? Call.Unknown;
            return new BookedCall(r.GetString(0), r.GetString(1), opened, new Call
            {
                ApplianceType = r.Text(3) ?? Call.Unknown,
                Brand = r.Text(4),
                ModelNumber = r.Text(5),
                ModelFamily = r.Text(6),
                AgeYears = age,
                AgeBasis = basis,
                MadeOn = Call.BuiltOn(opened, age, basis),
                ComplaintText = r.Text(9),
                ComplaintKind = r.GetString(10),
                ErrorCode = r.Text(11),
                CustomerKind = r.Text(12) ?? Call.Unknown,
                Month = opened.Month,
                Earlier = EarlierVisit.Parse(r.Text(13)),
            });
        },
        ("day", day), ("days", LongestWait));
}
