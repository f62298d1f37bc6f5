using System.Text;
using PartsSignal.SampleShop.Simulation;

namespace PartsSignal.SampleShop.Writing;

/// <summary>How a log holds the parts of a job.</summary>
internal enum PartsHeld
{
    /// <summary>Groups of columns that repeat across the row.</summary>
    InGroups,

    /// <summary>One row per part; a job without parts has one row.</summary>
    InRows,

    /// <summary>All in one cell.</summary>
    InOneCell,

    /// <summary>In a file of their own.</summary>
    Apart,
}

/// <summary>A column of a job log: its header, the field it means, and what it shows.</summary>
internal sealed record LogColumn(string Header, string Field, Func<JobRow, string> Show);

/// <summary>What one file of the job log looks like.</summary>
internal sealed record LogLayout
{
    public required string File { get; init; }

    public required Encoding Encoding { get; init; }

    public required string EncodingName { get; init; }

    public required char Separator { get; init; }

    public required string DateFormat { get; init; }

    public bool DecimalComma { get; init; }

    public required LogWords Words { get; init; }

    public required PartsHeld Parts { get; init; }

    public required IReadOnlyList<LogColumn> Columns { get; init; }

    public IReadOnlyList<string> NotesAbove { get; init; } = [];

    /// <summary>Lines below the last row; {0} stands for the count of rows.</summary>
    public IReadOnlyList<string> NotesBelow { get; init; } = [];

    /// <summary>Headers of the part columns: part, quantity, description, price, from_van; {0} stands for the group's number.</summary>
    public IReadOnlyList<(string Field, string Header)> PartColumns { get; init; } = [];

    public string SeparatorName => Separator switch
    {
        ';' => "semicolon",
        '\t' => "tab",
        _ => "comma",
    };

    /// <summary>Groups of part columns, where parts stand in groups.</summary>
    public const int Groups = 4;
}

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
