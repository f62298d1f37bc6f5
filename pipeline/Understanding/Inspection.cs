using PartsSignal.Pipeline.Reading;

namespace PartsSignal.Pipeline.Understanding;

/// <summary>What a file looks like, and how it would be read.</summary>
/// <param name="File">Its name.</param>
/// <param name="Form">In words: encoding and separator, or sheet.</param>
/// <param name="HeaderLine">Line of the header; 0: none.</param>
/// <param name="Rows">Rows below the header, with content.</param>
/// <param name="BadRows">Rows that cannot be cut into cells, or have too many or too few.</param>
/// <param name="Map">The proposed map; null: it is left out.</param>
/// <param name="Columns">What is proposed for each column.</param>
/// <param name="Doubts">What a person should look at before loading.</param>
/// <param name="Notes">What is good to know and needs no decision.</param>
internal sealed record Inspection(
    string File,
    string Form,
    int HeaderLine,
    long Rows,
    long BadRows,
    SourceMap? Map,
    IReadOnlyList<ProposedColumn> Columns,
    IReadOnlyList<string> Doubts,
    IReadOnlyList<string> Notes)
{
    /// <summary>Sheet of a workbook; null: a text file.</summary>
    public string? Sheet { get; init; }

    /// <summary>Where the table is, for people.</summary>
    public string Place => TablePlace.Of(File, Sheet);

    /// <summary>The first rows, a cell for each of <see cref="Columns"/>; personal cells without what they say. Made when asked for.</summary>
    public Lazy<IReadOnlyList<IReadOnlyList<string>>> Preview { get; init; } = new([]);

    /// <summary>Why the file or sheet cannot be read; null: it can.</summary>
    public string? Refusal { get; init; }
}
