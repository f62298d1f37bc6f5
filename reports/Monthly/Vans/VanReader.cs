using PartsSignal.Analysis.Sql;

namespace PartsSignal.Reports.Monthly.Vans;

/// <summary>Reads the van plan.</summary>
internal static class VanReader
{
    public static VanFacts? Read(Database database) => null;
}
