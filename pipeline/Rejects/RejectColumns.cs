using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Staging;

namespace PartsSignal.Pipeline.Rejects;

/// <summary>Columns of the table of rejects, in the store's shape: where and why, never the row itself.</summary>
internal sealed class RejectColumns(StagedTable table)
{
    private readonly TextColumn _files = table.Text("source_file");
    private readonly ValueColumn<int> _lines = table.Int("source_line");
    private readonly TextColumn _fields = table.Text("field");
    private readonly TextColumn _codes = table.Text("reason_code");
    private readonly TextColumn _messages = table.Text("message");
    private readonly TextColumn _suggestions = table.Text("suggestion");

    /// <summary>Fills a row; line 0 is the file as a whole.</summary>
    public void Set(int at, string file, int line, RowFault fault)
    {
        _files.Set(at, file);
        _lines.Set(at, line);
        _fields.Set(at, fault.Field);
        _codes.Set(at, fault.Code);
        _messages.Set(at, fault.Message);
        _suggestions.Set(at, fault.Suggestion);
    }
}
