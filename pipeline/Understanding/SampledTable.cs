namespace PartsSignal.Pipeline.Understanding;

/// <summary>A table as it was read for a proposal.</summary>
/// <param name="Sample">What is decided from.</param>
/// <param name="BadRows">Rows that cannot be cut into cells, or have too many or too few.</param>
/// <param name="AllColumns">Every column, also those that repeat another.</param>
internal sealed record SampledTable(TableSample Sample, long BadRows, IReadOnlyList<ColumnSample> AllColumns)
{
    /// <summary>The same columns, looked at in more rows, for what else a person should know.</summary>
    public IReadOnlyList<ColumnProfile> Profiles { get; init; } = [];

    /// <summary>The first rows with content, cells as typed; no more than <see cref="TablePreview.Rows"/>.</summary>
    public IReadOnlyList<IReadOnlyList<string>> FirstRows { get; init; } = [];

    /// <summary>Line of the header; 0: none.</summary>
    public int HeaderLine { get; init; }

    /// <summary>In words: encoding and separator, or sheet.</summary>
    public string Form { get; init; } = "";

    /// <summary>Why a sheet holds no table; null: it does.</summary>
    public string? Refusal { get; init; }
}
