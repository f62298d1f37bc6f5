using PartsSignal.Pipeline.Reading;

namespace PartsSignal.Pipeline.Staging;

/// <summary>One source file, staged: where its rows are and how they add up.</summary>
internal sealed record StagedFile
{
    /// <summary>Name relative to the input folder, with slashes; <c>source_file</c> of its rows.</summary>
    public required string SourceFile { get; init; }

    /// <summary>Kind of its rows, as in the map.</summary>
    public required string Kind { get; init; }

    /// <summary>Checksum of the unpacked bytes (XXH3 of 128 bits), lower-case hex.</summary>
    public required string ContentHash { get; init; }

    /// <summary>Position among all sources: the map's position times <see cref="SourceFile.PositionsPerMap"/> plus the file's within its pattern. Later wins.</summary>
    public required int SourceOrder { get; init; }

    /// <summary>Folder of the staged tables.</summary>
    public required string Folder { get; init; }

    /// <summary>
    /// Parquet files of this source, full paths, by table name (<c>staged_jobs</c>, <c>staged_job_parts</c>, ...). A
    /// table without rows is left out.
    /// </summary>
    public required IReadOnlyDictionary<string, string> Tables { get; init; }

    /// <summary>Parquet file of the rejected rows in the shape of the store's table, or null if there are none.</summary>
    public required string? Rejects { get; init; }

    /// <summary>CSV file with the rejected rows and the lines that are not data as they were, or null if there are none. Holds personal data.</summary>
    public required string? RawRejects { get; init; }

    /// <summary>The same for lines whose job is in no log, which only the transform finds, or null if there are none.</summary>
    public string? RawUnknownJobs { get; init; }

    /// <summary>Data rows of the file: without header, notes above it, blank lines, repeated headers and footers.</summary>
    public required long RowsRead { get; init; }

    /// <summary>Rows that could not be used. The others stand in the first table, a row each.</summary>
    public required long Rejected { get; init; }

    /// <summary>Lines of rejected rows that a mended file stands for: they count as replaced.</summary>
    public IReadOnlyList<int> MendedLines { get; init; } = [];

    /// <summary>Lines of unknown jobs that a mended file stands for. They count as replaced if their job is still unknown.</summary>
    public IReadOnlyList<MendedPartLine> MendedPartLines { get; init; } = [];

    /// <summary>Recognised footer lines (totals, free text below the data), not counted as rows.</summary>
    public required long Footers { get; init; }

    /// <summary>Header lines that were repeated among the data, not counted as rows.</summary>
    public required long RepeatedHeaders { get; init; }

    /// <summary>Lines above the header, not counted as rows.</summary>
    public required long Titles { get; init; }

    /// <summary>Lines that are not data: titles, repeated headers and footers. Their text stands in <see cref="RawRejects"/>.</summary>
    public long NotData => Titles + RepeatedHeaders + Footers;

    /// <summary>
    /// True when a job may stand on several rows with one part each: rows with the same job number and the same job
    /// cells are one job, and none of them replaces another.
    /// </summary>
    public required bool OnePartPerRow { get; init; }

    /// <summary>What was decided about the file and should be said aloud, for example an assumed date order.</summary>
    public required IReadOnlyList<string> Remarks { get; init; }

    /// <summary>Cells of lesser fields that could not be read and count as unknown.</summary>
    public required IReadOnlyList<UnreadCells> UnreadCells { get; init; }

    /// <summary>Languages of the file's texts.</summary>
    public IReadOnlyList<string> Languages { get; init; } = [];

    /// <summary>Why the file could not be read at all, or null if it could. It then counts as one row, read and rejected.</summary>
    public RowFault? Refused { get; init; }

    /// <summary>True when the staged files were there already.</summary>
    public bool FromCache { get; init; }
}

/// <summary>A mended part line whose job was in no log.</summary>
/// <param name="SourceLine">Its line in the shop's file at that time, or null if the mended file does not say.</param>
/// <param name="Message">Why it was refused, which names the job number as it was; empty if the mended file does not say.</param>
internal sealed record MendedPartLine(int? SourceLine, string Message);

/// <summary>Cells of one field that could not be read; their rows are loaded without them.</summary>
/// <param name="Field">Field of the kind.</param>
/// <param name="Code">Reason code.</param>
/// <param name="Cells">How many.</param>
/// <param name="FirstLine">Line of the first.</param>
internal sealed record UnreadCells(string Field, string Code, long Cells, int FirstLine)
{
    /// <summary>The tallies of all workers of a file together, by field and code.</summary>
    public static IReadOnlyList<UnreadCells> Sum(IEnumerable<UnreadCells> parts) =>
        [.. parts.GroupBy(p => (p.Field, p.Code))
            .Select(g => new UnreadCells(g.Key.Field, g.Key.Code, g.Sum(p => p.Cells), g.Min(p => p.FirstLine)))
            .OrderBy(u => u.Field, StringComparer.Ordinal).ThenBy(u => u.Code, StringComparer.Ordinal)];
}
