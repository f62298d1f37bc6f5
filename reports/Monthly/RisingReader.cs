using PartsSignal.Analysis.Sql;
using PartsSignal.Reports.Charts;
using PartsSignal.Reports.Components;

namespace PartsSignal.Reports.Monthly;

/// <summary>Reads what is rising from the alarms of the trend scan.</summary>
internal static class RisingReader
{
    private const string Drift = "drift";
    private const int MonthsBefore = 6;

    private sealed record Scan(DateOnly Month, long SeriesTested, double FalsePerYear);

    private sealed record Blind(double? Expected, double? DetectableRatio);

    private sealed record Alarm(
        DateOnly Month, string Kind, string ApplianceType, string Component, string ModelFamily, long Observed, double Expected, double Ratio, double? LeastRatio, double? P, double? Q,
        DateOnly? Since, long? LargestCustomerCases, bool? SurvivesCustomer, string? LargestTechnician, bool? SurvivesTechnician,
        string? LargestModel, bool? SurvivesModel, DateOnly? BuiltFrom, DateOnly? BuiltTo, long? BuiltCases, long? BuiltKnown, string? PartOf)
    {
        public string Name => SeriesName.Describe(ApplianceType, Component, ModelFamily);
    }

    private sealed record AlarmMonth(DateOnly Month, long Known, double? Expected, double? AlarmCount, double? Completeness, bool Alarm);

    public static RisingFacts? Read(Database database, DateOnly month)
    {
        if (!database.Has("trend_alarms") || !database.Has("trend_scans")
            || database.ReadTable<Scan>("trend_scans").FirstOrDefault(s => s.Month == month) is not { } scan)
        {
            return null;
        }

        // Those least likely by chance first.
        Alarm[] alarms = [.. database.ReadTable<Alarm>("trend_alarms")
            .OrderBy(a => a.Kind == Drift).ThenBy(a => a.Q ?? double.MaxValue).ThenByDescending(a => a.Ratio)
            .ThenBy(a => a.ApplianceType, StringComparer.Ordinal).ThenBy(a => a.Component, StringComparer.Ordinal).ThenBy(a => a.ModelFamily, StringComparer.Ordinal)];
        return new RisingFacts(
            [.. alarms.Where(a => a.Month == month && a.PartOf is null).Select(a => Describe(database, month, a))],
            [.. alarms.Where(a => a.Month == month && a.PartOf is not null)
                .OrderBy(a => a.PartOf, StringComparer.Ordinal).ThenBy(a => a.ApplianceType, StringComparer.Ordinal).ThenBy(a => a.Component, StringComparer.Ordinal)
                .ThenBy(a => a.ModelFamily, StringComparer.Ordinal).ThenBy(a => a.Kind, StringComparer.Ordinal)
                .Select(a => new ExplainedAlarm(a.Name, a.Observed, a.Expected, SeriesName.DescribePath(a.PartOf!)))],
            [.. alarms.Where(a => a.Month >= month.AddMonths(-MonthsBefore) && a.Month < month && a.PartOf is null)
                .OrderByDescending(a => a.Month)
                .Select(a => new EarlierAlarm(a.Month, a.Name, a.Observed, a.Expected, a.Since))],
            scan.SeriesTested,
            $"Each count is compared with its own earlier months. Even if nothing is wrong, there will be false alarms: about {Times(scan.FalsePerYear)} a year. Read the jobs behind a rise before you act.",
            NotSeen(database));
    }

    private static RisingAlarm Describe(Database database, DateOnly month, Alarm alarm)
    {
        ReadOnlySpan<(string, object?)> series = [("type", alarm.ApplianceType), ("component", alarm.Component), ("family", alarm.ModelFamily), ("month", month)];
        IReadOnlyList<AlarmMonth> months = database.Has("trend_months") ? database.Read<AlarmMonth>("queries/report/alarm_months.sql", series) : [];
        return new RisingAlarm(
            alarm.Name, alarm.Kind == Drift, alarm.Observed, alarm.Expected, alarm.LeastRatio, alarm.P, alarm.Since, Evidence(alarm),
            [.. months.Select(m => new SeriesMonth(m.Month, m.Known, m.Expected, m.AlarmCount, m.Alarm, m.Completeness >= 0.9))],
            database.Read<AlarmJob>("queries/report/alarm_jobs.sql", [.. series, ("kind", alarm.Kind)]));
    }

    private static IReadOnlyList<string> Evidence(Alarm alarm)
    {
        var lines = new List<string>();
        if (alarm is { BuiltFrom: { } from, BuiltTo: { } to, BuiltCases: { } built, BuiltKnown: { } known })
        {
            lines.Add($"{Format.Count(built)} of {Format.Count(known)} appliances of known build month were built from {Format.Month(from)} to {Format.Month(to)}: this points to a bad batch.");
        }

        Add(alarm.SurvivesCustomer, $"the customer with most cases ({Format.Count(alarm.LargestCustomerCases ?? 0)})");
        Add(alarm.SurvivesTechnician, alarm.LargestTechnician is { } technician ? $"technician {technician}" : null);
        Add(alarm.SurvivesModel, alarm.LargestModel is { } model ? $"model {model}" : null);
        return lines;

        void Add(bool? survives, string? without)
        {
            if (without is not null && survives is { } stays)
            {
                lines.Add(stays ? $"It stays a rise without {without}." : $"Without {without} it is no rise any more: look there first.");
            }
        }
    }

    private static string Times(double perYear) => perYear < 1.5 ? "one" : Format.Count((long)Math.Round(perYear));

    private static string NotSeen(Database database) =>
        database.Has("trend_tests") && database.Single<Blind>("queries/report/trend_blind.sql") is { Expected: { } expected, DetectableRatio: { } ratio }
            ? $"A typical part in one family is needed {(expected < 1 ? "less than once" : $"about {Format.Count((long)Math.Round(expected))} times")} a month. At that rate, only a jump to about {Format.Count((long)Math.Round(ratio))} times as many will usually show in one month; a smaller rise may be missed."
            : "";
}

/// <summary>A series in words.</summary>
internal static class SeriesName
{
    private const string All = "all";

    /// <summary>For example: washer inlet valve, family K41.</summary>
    public static string Describe(string type, string component, string family)
    {
        string what = component switch
        {
            All => $"all {Format.Words(type)} calls",
            "none" => $"{Format.Words(type)} calls that needed no part",
            _ => $"{Format.Words(type)} {Format.Words(component)}",
        };
        return family == All ? what : $"{what}, family {family}";
    }

    /// <summary>The same for <c>type / component / family</c>.</summary>
    public static string DescribePath(string path) => path.Split(" / ") is [var type, var component, var family] ? Describe(type, component, family) : path;
}
