using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Vocabulary;

namespace PartsSignal.Analysis.Trends;

/// <summary>One call as the trends see it. Months are counted as year * 12 + month - 1.</summary>
/// <param name="JobId">Job number.</param>
/// <param name="Month">Month of the call.</param>
/// <param name="KnownMonth">Month in which its component became known, or null if not known yet.</param>
/// <param name="ApplianceType">For example washer.</param>
/// <param name="ModelFamily">Family.</param>
/// <param name="Component">What failed, or null if not known yet.</param>
/// <param name="Technician">Who went, or null if unknown.</param>
/// <param name="Customer">Whose appliance, or null if unknown.</param>
/// <param name="Model">Model number, or null if unknown.</param>
/// <param name="MadeMonth">Month it was built, where known to a quarter of a year.</param>
public sealed record TrendCall(
    string JobId,
    int Month,
    int? KnownMonth,
    string ApplianceType,
    string ModelFamily,
    string? Component,
    string? Technician,
    [Column("customer_id")] string? Customer,
    [Column("model_number")] string? Model,
    int? MadeMonth)
{
    /// <summary>True when a component is known to have failed.</summary>
    public bool HasFailure => Component is not null and not Need.NoPart and not Need.OtherPart;

    /// <summary>Reads the calls in the order of trend_calls.</summary>
    public static IReadOnlyList<TrendCall> Read(Database database) => database.ReadTable<TrendCall>("trend_calls");
}

/// <summary>Months counted as year * 12 + month - 1.</summary>
internal static class TrendMonth
{
    /// <summary>The first day of a month.</summary>
    public static DateOnly Day(int month) => new(month / 12, month % 12 + 1, 1);
}
