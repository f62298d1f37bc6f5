namespace PartsSignal.Analysis.Trends;

/// <summary>A rise that passed, with all that is needed to judge it.</summary>
/// <param name="Month">First day of the month.</param>
/// <param name="Kind">month: more than the month should have; drift: more than the year should have.</param>
/// <param name="ApplianceType">For example washer.</param>
/// <param name="Component">A component, or all.</param>
/// <param name="ModelFamily">A family, or all.</param>
/// <param name="BaselineMonths">Months of the baseline.</param>
/// <param name="BaselineEvents">Cases in it.</param>
/// <param name="BaselinePer100">Cases in it per 100 calls of the group.</param>
/// <param name="Expected">Cases expected to be known by the end of the month (drift: since it began).</param>
/// <param name="Observed">Cases known by then.</param>
/// <param name="Ratio">Observed over expected.</param>
/// <param name="LeastRatio">The rise is at least so many times the usual, given that only rises large enough to alarm are looked at (<see cref="SelectedRatio"/>); null for drift, and where its size cannot be told.</param>
/// <param name="Completeness">Share of the month's cases known by its end.</param>
/// <param name="P">Mid-p; null for drift.</param>
/// <param name="Q">The same held against everything scanned; null for drift.</param>
/// <param name="RunLength">Mean months between false drift alarms of one series; null for month.</param>
/// <param name="Since">First day of the month since when.</param>
/// <param name="SinceCertainty">Log Bayes factor of a change at all: above 3 is strong; null for drift.</param>
/// <param name="AlarmCount">Smallest count that would have alarmed among everything scanned that month.</param>
/// <param name="DetectableRatio">Smallest rise that would have been found four times out of five.</param>
/// <param name="LargestCustomerCases">Cases of the customer with most of them.</param>
/// <param name="SurvivesCustomer">Still a rise without that customer.</param>
/// <param name="LargestTechnician">Technician with most of the cases.</param>
/// <param name="SurvivesTechnician">Still a rise without that technician.</param>
/// <param name="LargestModel">Model with most of the cases.</param>
/// <param name="SurvivesModel">Still a rise without that model.</param>
/// <param name="BuiltFrom">First build month in which the appliances concentrate, or null if they do not.</param>
/// <param name="BuiltTo">Last build month of it.</param>
/// <param name="BuiltCases">Cases since Since built within.</param>
/// <param name="BuiltKnown">Cases since Since whose build month is known.</param>
/// <param name="PartOf">The alarm that explains this one, as type / component / family, or null if it stands by itself.</param>
/// <param name="Jobs">Jobs behind it, listed in trend_alarm_jobs.</param>
public sealed record TrendAlarm(
    DateOnly Month,
    string Kind,
    string ApplianceType,
    string Component,
    string ModelFamily,
    int BaselineMonths,
    double BaselineEvents,
    double BaselinePer100,
    double Expected,
    long Observed,
    double Ratio,
    double? LeastRatio,
    double Completeness,
    double? P,
    double? Q,
    double? RunLength,
    DateOnly Since,
    double? SinceCertainty,
    long AlarmCount,
    double? DetectableRatio,
    long LargestCustomerCases,
    bool SurvivesCustomer,
    string? LargestTechnician,
    bool SurvivesTechnician,
    string? LargestModel,
    bool SurvivesModel,
    DateOnly? BuiltFrom,
    DateOnly? BuiltTo,
    long? BuiltCases,
    long? BuiltKnown,
    string? PartOf,
    long Jobs)
{
    /// <summary>A rise of one month.</summary>
    public const string OfMonth = "month";

    /// <summary>A slow rise.</summary>
    public const string OfDrift = "drift";

    /// <summary>The series.</summary>
    internal SeriesKey Key() => new(ApplianceType, Component, ModelFamily);
}

/// <summary>A job behind an alarm.</summary>
public sealed record TrendAlarmJob(DateOnly Month, string Kind, string ApplianceType, string Component, string ModelFamily, string JobId);
