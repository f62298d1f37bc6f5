namespace PartsSignal.Pipeline.Staging;

/// <summary>The columns that say where a staged row came from; the last ones of every staged table.</summary>
internal sealed class RowStamp(StagedTable table, StageTarget target)
{
    private TextColumn? _hash;
    private ValueColumn<int>? _order;
    private WordColumn? _file;
    private ValueColumn<int>? _line;

    /// <summary>Fills them. The columns are made with the first row, after the table's own.</summary>
    public void Set(int at, ReadOnlySpan<char> rowHash, int line)
    {
        (_hash ??= table.Text("row_hash")).Set(at, rowHash);
        (_order ??= table.Int("source_order")).Set(at, target.SourceOrder);
        (_file ??= table.Word("source_file")).Set(at, target.SourceFile);
        (_line ??= table.Int("source_line")).Set(at, line);
    }
}
