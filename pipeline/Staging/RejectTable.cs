using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Reading;

namespace PartsSignal.Pipeline.Staging;

/// <summary>The staged rejects of one file, in the store's shape: where and why, never the row itself.</summary>
internal sealed class RejectTable : IAsyncDisposable
{
    private static readonly StagedColumnSpec[] Columns =
    [
        new("source_file", ColumnType.Text), new("source_line", ColumnType.Int), new("field", ColumnType.Text),
        new("reason_code", ColumnType.Text), new("message", ColumnType.Text), new("suggestion", ColumnType.Text),
    ];

    private readonly StagedTableFile _file;
    private readonly StagedTable _table;
    private readonly TextColumn _files, _fields, _codes, _messages, _suggestions;
    private readonly ValueColumn<int> _lines;

    /// <summary>Prepares the table in a folder of staged files.</summary>
    public RejectTable(string stageFolder)
    {
        _file = new StagedTableFile("rejects", stageFolder);
        _table = new StagedTable(_file, Columns, null);
        (_files, _lines, _fields) = (_table.Text("source_file"), _table.Value<int>("source_line"), _table.Text("field"));
        (_codes, _messages, _suggestions) = (_table.Text("reason_code"), _table.Text("message"), _table.Text("suggestion"));
    }

    /// <summary>Rows so far.</summary>
    public long Rows { get; private set; }

    /// <summary>Adds a row; line 0 is the file as a whole.</summary>
    public async ValueTask AddAsync(string file, int line, RowFault fault, CancellationToken cancellation)
    {
        int at = _table.At;
        _files.Set(at, file);
        _lines.Set(at, line);
        _fields.Set(at, fault.Field);
        _codes.Set(at, fault.Code);
        _messages.Set(at, fault.Message);
        _suggestions.Set(at, fault.Suggestion);
        _table.EndRow();
        Rows++;
        if (_table.At == RowGroup.MostRows)
        {
            await _table.WriteGroupAsync(cancellation).ConfigureAwait(false);
        }
    }

    /// <summary>Ends the table.</summary>
    /// <returns>Path of its file; null where there was no row.</returns>
    public async Task<string?> CompleteAsync(CancellationToken cancellation)
    {
        await _table.WriteGroupAsync(cancellation).ConfigureAwait(false);
        return await _file.CompleteAsync().ConfigureAwait(false);
    }

    /// <inheritdoc/>
    public ValueTask DisposeAsync() => _file.DisposeAsync();
}
