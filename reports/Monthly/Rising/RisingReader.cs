using PartsSignal.Analysis.Sql;

namespace PartsSignal.Reports.Monthly.Rising;

/// <summary>Reads what is rising.</summary>
internal static class RisingReader
{
    public static RisingFacts? Read(Database database, MonthlyQuery query) => null;
}
