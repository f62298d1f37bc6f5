using PartsSignal.SampleShop.Simulation;

namespace PartsSignal.SampleShop.Writing;

/// <summary>The words one job log uses for outcomes, types and the like.</summary>
internal sealed record LogWords(
    IReadOnlyDictionary<JobState, string> Outcomes, IReadOnlyDictionary<string, string> Types, string Yes, string No)
{
    /// <summary>The words of the office's first software.</summary>
    public static LogWords Old { get; } = new(
        new Dictionary<JobState, string>
        {
            [JobState.Waiting] = "",
            [JobState.PartOrdered] = "awaiting part",
            [JobState.FixedWithPart] = "repaired, part fitted",
            [JobState.FixedWithoutPart] = "repaired no parts",
            [JobState.NoFaultFound] = "no fault",
            [JobState.Declined] = "cust refused quote",
            [JobState.NotWorthRepairing] = "scrap",
        },
        new Dictionary<string, string>
        {
            ["washer"] = "Washing machine",
            ["dryer"] = "Tumble dryer",
            ["dishwasher"] = "Dishwasher",
            ["refrigerator"] = "Fridge",
            ["range"] = "Cooker",
            ["microwave"] = "Microwave",
        },
        "van",
        "ordered");

    /// <summary>The words of the software the office uses now.</summary>
    public static LogWords New { get; } = new(
        new Dictionary<JobState, string>
        {
            [JobState.Waiting] = "open",
            [JobState.PartOrdered] = "part on order",
            [JobState.FixedWithPart] = "done - part",
            [JobState.FixedWithoutPart] = "done - no part",
            [JobState.NoFaultFound] = "NFF",
            [JobState.Declined] = "declined",
            [JobState.NotWorthRepairing] = "BER",
        },
        new Dictionary<string, string>
        {
            ["washer"] = "washer",
            ["dryer"] = "dryer",
            ["dishwasher"] = "dishwasher",
            ["refrigerator"] = "fridge/freezer",
            ["range"] = "range",
            ["microwave"] = "microwave",
        },
        "Y",
        "N");

    /// <summary>The design's word for a state; the state of a job nobody has seen is not known.</summary>
    public static string Ours(JobState state) => state switch
    {
        JobState.PartOrdered => "part_ordered",
        JobState.FixedWithPart => "fixed_with_part",
        JobState.FixedWithoutPart => "fixed_without_part",
        JobState.NoFaultFound => "no_fault_found",
        JobState.Declined => "declined",
        JobState.NotWorthRepairing => "not_worth_repairing",
        _ => "unknown",
    };
}
