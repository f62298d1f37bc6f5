namespace PartsSignal.Pipeline.Staging;

/// <summary>What is kept beside the staged tables of a file, so that they can be used again.</summary>
internal sealed record StageRecord
{
    public required string SourceFile { get; init; }

    public required string Kind { get; init; }

    public required string ContentHash { get; init; }

    public required int SourceOrder { get; init; }

    public required IReadOnlyList<string> Tables { get; init; }

    public required bool HasRejects { get; init; }

    public required bool HasRawRejects { get; init; }

    public required long RowsRead { get; init; }

    public required long Rejected { get; init; }

    public required long Footers { get; init; }

    public required long RepeatedHeaders { get; init; }

    public required long Titles { get; init; }

    public required bool OnePartPerRow { get; init; }

    public required FileStyle Style { get; init; }

    public required IReadOnlyList<string> Remarks { get; init; }

    public required IReadOnlyList<UnreadCells> UnreadCells { get; init; }

    /// <summary>Languages of the file's texts, the commonest among them.</summary>
    public IReadOnlyList<string> Languages { get; init; } = [];

    /// <summary>The record with the paths of its folder.</summary>
    public StagedFile ToStagedFile(string folder, string rawPath) => new()
    {
        SourceFile = SourceFile,
        Kind = Kind,
        ContentHash = ContentHash,
        SourceOrder = SourceOrder,
        Folder = folder,
        Tables = Tables.ToDictionary(t => t, t => Path.Combine(folder, t + ".parquet"), StringComparer.Ordinal),
        Rejects = HasRejects ? Path.Combine(folder, "rejects.parquet") : null,
        RawRejects = HasRawRejects ? rawPath : null,
        RowsRead = RowsRead,
        Rejected = Rejected,
        Footers = Footers,
        RepeatedHeaders = RepeatedHeaders,
        Titles = Titles,
        OnePartPerRow = OnePartPerRow,
        Remarks = Remarks,
        UnreadCells = UnreadCells,
        Languages = Languages,
    };
}
