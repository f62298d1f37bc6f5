namespace PartsSignal.Pipeline.Combining;

/// <summary>One staged file, as the combining needs it.</summary>
/// <param name="SourceFile">Name relative to the input folder.</param>
/// <param name="Kind">Kind of its rows.</param>
/// <param name="ContentHash">Hash of its bytes.</param>
/// <param name="SourceOrder">Position among all sources; of two tellings the later wins.</param>
/// <param name="Tables">Parquet files by staged table.</param>
/// <param name="Rejects">Parquet file of the rejected rows; null: none.</param>
/// <param name="RowsRead">Data rows of the file.</param>
/// <param name="Rejected">Rows that could not be used.</param>
/// <param name="OnePartPerRow">A job may stand on several rows with one part each.</param>
public sealed record StagedSource(
    string SourceFile,
    string Kind,
    string ContentHash,
    int SourceOrder,
    IReadOnlyDictionary<string, string> Tables,
    string? Rejects,
    long RowsRead,
    long Rejected,
    bool OnePartPerRow);
