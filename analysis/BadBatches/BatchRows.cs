using PartsSignal.Analysis.Sql;

namespace PartsSignal.Analysis.BadBatches;

/// <summary>One case of a known family, cause and build month. Months are counted as year * 12 + month - 1.</summary>
/// <param name="JobId">Its first call.</param>
/// <param name="UnitId">The unit, or null if it cannot be told from others.</param>
/// <param name="CustomerId">Whose unit, or null if unknown.</param>
/// <param name="ModelNumber">Its model, or null if unknown.</param>
/// <param name="ApplianceType">For example washer.</param>
/// <param name="ModelFamily">Family.</param>
/// <param name="Component">What failed; none: no part was needed.</param>
/// <param name="Month">Month of the first call.</param>
/// <param name="MadeMonth">Month in which the unit was built, known to a quarter of a year.</param>
public sealed record BatchCall(
    string JobId, string? UnitId, string? CustomerId, string? ModelNumber, string ApplianceType, string ModelFamily, string Component, int Month, int MadeMonth);

/// <summary>One unit still out there as far as the shop knows.</summary>
/// <param name="UnitId">The unit.</param>
/// <param name="ApplianceType">For example washer.</param>
/// <param name="ModelFamily">Family.</param>
/// <param name="MadeMonth">Month in which it was built, known to a quarter of a year.</param>
/// <param name="Registered">True if a register lists it; false if it is known from its jobs.</param>
public sealed record BatchUnit(string UnitId, string ApplianceType, string ModelFamily, int MadeMonth, bool Registered);

/// <summary>What bad batches are looked for in.</summary>
/// <param name="Calls">Every case whose cause and build month are known.</param>
/// <param name="Units">Every unit still out there whose build month is known.</param>
public sealed record BatchRows(IReadOnlyList<BatchCall> Calls, IReadOnlyList<BatchUnit> Units)
{
    /// <summary>Reads batch_calls and batch_units.</summary>
    public static BatchRows Read(Database database) =>
        new(database.ReadTable<BatchCall>("batch_calls"), database.ReadTable<BatchUnit>("batch_units"));
}
