namespace PartsSignal.Pipeline.Staging.Tables;

/// <summary>The kinds of files there are.</summary>
public static class KindStagers
{
    private static readonly Dictionary<string, Func<StageTarget, KindStager>> Makers = new(StringComparer.Ordinal)
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

    internal static KindStager Make(string kind, StageTarget target) =>
        Makers.TryGetValue(kind, out Func<StageTarget, KindStager>? make) ? make(target) : throw new ArgumentException($"No kind '{kind}'.", nameof(kind));
}
