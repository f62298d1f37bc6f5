using System.Data.Common;
using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Statistics;

namespace PartsSignal.Reports.Monthly;

/// <summary>Estimates as result tables hold them: value, lower and upper end, side by side.</summary>
internal static class Estimates
{
    /// <summary>The estimate whose value stands at <paramref name="at"/>, its ends after it.</summary>
    /// <param name="row">The row.</param>
    /// <param name="at">Place of the value.</param>
    /// <param name="missing">Reason where there is no value.</param>
    public static Estimate Estimate(this DbDataReader row, int at, string? missing = null) =>
        row.Double(at) is { } value ? Analysis.Statistics.Estimate.From(value, row.Double(at + 1), row.Double(at + 2)) : Analysis.Statistics.Estimate.None(missing ?? "not known");
}
