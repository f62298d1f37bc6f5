using System.Text;

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
