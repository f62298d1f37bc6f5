using System.Data.Common;
using PartsSignal.Analysis.Sql;
using PartsSignal.Reports.Charts;
using PartsSignal.Reports.Components;

namespace PartsSignal.Reports.Monthly;

/// <summary>Reads what is rising.</summary>
internal static class RisingReader
{
    private const string Drift = "drift";

    public static RisingFacts? Read(Database database, MonthlyOptions query)
    {
        if (!database.Has("trend_alarms") || !database.Has("trend_scans"))
        {
            return null;
        }

        var scans = database.Read("queries/report/trend_scan.sql", r => (Tested: r.GetInt64(0), Summed: r.GetInt64(1), False: r.Double(2) ?? 0, FalseDrifts: r.Double(3) ?? 0), ("month", query.Month));
        if (scans.Count == 0)
        {
            return null;
        }

        return new RisingFacts(
            database.Read("queries/report/alarms.sql", r => Alarm(database, query, r), ("month", query.Month)),
            database.Read("queries/report/alarm_parts.sql", r => new ExplainedAlarm(
                SeriesName.Of(r.GetString(0), r.GetString(1), r.GetString(2)), r.GetInt64(4), r.Double(5) ?? 0, SeriesName.OfPath(r.GetString(6))), ("month", query.Month)),
            database.Read("queries/report/alarms_before.sql", r => new EarlierAlarm(
                r.Day(0)!.Value, SeriesName.Of(r.GetString(2), r.GetString(3), r.GetString(4)), r.GetInt64(5), r.Double(6) ?? 0, r.Day(7)), ("month", query.Month)),
            scans[0].Tested,
            $"Each series of the month (a component, a family, or both) is held against its own months before, as it could be told at the month's end. Of the alarms for one month about {Format.Percent(scans[0].False)} may be false; of slow rises chance alone would give {Format.Number(scans[0].FalseDrifts)} a month.",
            Blind(database));
    }

    private static RisingAlarm Alarm(Database database, MonthlyOptions query, DbDataReader r)
    {
        string kind = r.GetString(0), type = r.GetString(1), component = r.GetString(2), family = r.GetString(3);
        return new RisingAlarm(
            SeriesName.Of(type, component, family), kind == Drift, r.GetInt64(4), r.Double(5) ?? 0, r.Estimate(6), r.Double(9), r.Day(12), Evidence(r),
            Months(database, query, type, component, family),
            database.Read("queries/report/alarm_jobs.sql", j => new AlarmJob(j.GetString(0), j.Day(1)!.Value, j.Text(2), j.Double(3), j.Text(4), j.Text(5), j.Text(6)),
                ("month", query.Month), ("kind", kind), ("type", type), ("component", component), ("family", family)));
    }

    private static IReadOnlyList<SeriesMonth> Months(Database database, MonthlyOptions query, string type, string component, string family) =>
        !database.Has("trend_months") ? [] : database.Read("queries/report/alarm_months.sql", m => new SeriesMonth(
            m.Day(0)!.Value, m.GetInt64(1), m.Double(2), m.Double(3), m.GetBoolean(5), m.Double(4) >= 0.9),
            ("type", type), ("component", component), ("family", family), ("month", query.Month));

    private static IReadOnlyList<string> Evidence(DbDataReader r)
    {
        var lines = new List<string>();
        if (r.Day(19) is { } from && r.Day(20) is { } to && r.Long(21) is { } built && r.Long(22) is { } known)
        {
            lines.Add($"{Format.Count(built)} of {Format.Count(known)} appliances of known build month were built from {Format.Month(from)} to {Format.Month(to)}: this points to a bad batch.");
        }

        Add(lines, r.Flag(14), $"the customer with most cases ({Format.Count(r.Long(13) ?? 0)})");
        Add(lines, r.Flag(16), r.Text(15) is { } technician ? $"technician {technician}" : null);
        Add(lines, r.Flag(18), r.Text(17) is { } model ? $"model {model}" : null);
        return lines;
    }

    private static void Add(List<string> lines, bool? survives, string? without)
    {
        if (without is not null && survives is { } stays)
        {
            lines.Add(stays ? $"It stays a rise without {without}." : $"Without {without} it is no rise any more: look there first.");
        }
    }

    private static string Blind(Database database) => !database.Has("trend_tests") ? "" :
        database.Read("queries/report/trend_blind.sql", r => r.Double(0) is { } expected && r.Double(1) is { } ratio
            ? $"What a month cannot show: in the middle one of all family series ({Format.Number(expected)} calls expected) a rise is found four times in five only from {Format.Number(ratio)} times the usual on."
            : "")[0];
}
