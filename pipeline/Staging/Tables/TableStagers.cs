namespace PartsSignal.Pipeline.Staging.Tables;

/// <summary>The kinds of files there are.</summary>
public static class TableStagers
{
    private static readonly Dictionary<string, Func<StageTarget, TableStager>> Makers = new(StringComparer.Ordinal)
    {
        ["jobs"] = t => new JobsStager(t),
        ["job_parts"] = t => new JobPartsStager(t),
        ["part_orders"] = t => new PartOrdersStager(t),
        ["parts"] = t => new PartsStager(t),
        ["supersessions"] = t => new SupersessionsStager(t),
        ["part_aliases"] = t => new PartAliasesStager(t),
        ["fitments"] = t => new FitmentsStager(t),
        ["models"] = t => new ModelsStager(t),
        ["units"] = t => new UnitsStager(t),
        ["van_counts"] = t => new VanCountsStager(t),
    };

    /// <summary>Their names.</summary>
    public static IReadOnlyCollection<string> Names => Makers.Keys;

    internal static TableStager Make(string kind, StageTarget target) =>
        Makers.TryGetValue(kind, out Func<StageTarget, TableStager>? make) ? make(target) : throw new ArgumentException($"No kind '{kind}'.", nameof(kind));
}
