namespace PartsSignal.Pipeline.Staging.Tables;

/// <summary>Makes the stager of a kind of file.</summary>
internal static class TableStagers
{
    /// <summary>The stager of a kind; one without rules of its own is staged field by field.</summary>
    public static TableStager Make(string kind, StageTarget target) => kind switch
    {
        "jobs" => new JobsStager(target),
        "job_parts" => new JobPartsStager(target),
        "part_orders" => new PartOrdersStager(target),
        "parts" => new PartsStager(target),
        "supersessions" => new SupersessionsStager(target),
        "fitments" => new FitmentsStager(target),
        "van_counts" => new VanCountsStager(target),
        "units" => new UnitsStager(target),
        _ => new ListStager(target, kind),
    };
}
