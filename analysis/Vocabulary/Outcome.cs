namespace PartsSignal.Analysis.Vocabulary;

/// <summary>How a job ended, as the store spells it.</summary>
public static class Outcome
{
    public const string FixedWithPart = "fixed_with_part";

    /// <summary>Fixed, and the log does not say whether with a part: part lines decide where the shop records parts, else it stays so.</summary>
    public const string Fixed = "fixed";

    public const string FixedWithoutPart = "fixed_without_part";
    public const string PartOrdered = "part_ordered";
    public const string Declined = "declined";
    public const string NotWorthRepairing = "not_worth_repairing";
    public const string NoFaultFound = "no_fault_found";
    public const string Unknown = "unknown";

    /// <summary>All of them.</summary>
    public static readonly IReadOnlyList<string> All =
        [FixedWithPart, FixedWithoutPart, Fixed, PartOrdered, Declined, NotWorthRepairing, NoFaultFound, Unknown];
}
