using PartsSignal.Pipeline.Reading;

namespace PartsSignal.Pipeline.Understanding;

/// <summary>A table of the shop, as much of it as is needed to tell what it is.</summary>
/// <param name="File">Name of the file.</param>
/// <param name="Sheet">Sheet of a workbook; null: a text file.</param>
/// <param name="Rows">Rows below the header.</param>
/// <param name="Columns">The columns; of those that repeat (<c>Part 1</c>, <c>Part 2</c>) the first, for all of them.</param>
internal sealed record TableSample(string File, string? Sheet, long Rows, IReadOnlyList<ColumnSample> Columns)
{
    /// <summary>Where the table is, for people.</summary>
    public string Place => TablePlace.Of(File, Sheet);

    /// <summary>Sampled rows.</summary>
    public int Sampled => Columns.Count == 0 ? 0 : Columns[0].Cells.Length;
}
