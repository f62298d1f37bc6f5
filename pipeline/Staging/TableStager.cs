using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Privacy;
using PartsSignal.Pipeline.Reading;

namespace PartsSignal.Pipeline.Staging;

/// <summary>Turns the rows of one kind of file into staged rows. Not for two threads at a time.</summary>
internal abstract class TableStager
{
    private const char FieldEnd = '\u001f';
    private readonly List<StagedTable> _tables = [];
    private readonly HashSet<string> _claimed = new(StringComparer.Ordinal);
    private readonly string _kind;
    private readonly ValueColumn<UInt128> _hashes;
    private readonly ValueColumn<int> _lines;
    private MappedField[]? _fields;
    private int[]? _columns;
    private UnreadColumn[] _unread = [];
    private char[] _rowText = new char[1024];

    protected TableStager(StageTarget target, string kind)
    {
        (Target, _kind) = (target, kind);
        foreach (Field field in FieldCatalog.Of(kind))
        {
            // The digest of a row covers the fields in this order.
            _ = target.Map.Field(field.Name);
        }

        Table = NewTable("staged_" + kind);
        (_hashes, _lines) = (Table.Value<UInt128>(StagedSchema.RowHash.Name), Table.Value<int>(StagedSchema.SourceLine.Name));
    }

    /// <summary>Where rows go and what they are made with.</summary>
    protected StageTarget Target { get; }

    /// <summary>Table with a row per source row.</summary>
    protected StagedTable Table { get; }

    /// <summary>True when a job may stand on several rows.</summary>
    public virtual bool OnePartPerRow => false;

    /// <summary>Reads the row and adds it, unless it has a fault.</summary>
    public abstract void Stage(MappedRow row);

    /// <summary>Writes what was gathered of all tables.</summary>
    public async Task WriteGroupAsync(CancellationToken cancellation)
    {
        foreach (StagedTable table in _tables)
        {
            await table.WriteGroupAsync(cancellation).ConfigureAwait(false);
        }
    }

    /// <summary>Takes a field that the stager reads itself, because it needs more than its own cell.</summary>
    protected MappedField Claim(string field)
    {
        _claimed.Add(field);
        return Target.Map.Field(field);
    }

    /// <summary>Whether a row has a number of its own, or should have one: a file may give none, or leave many blank.</summary>
    protected bool IsNumbered(MappedField number, MappedRow row) => number.IsMapped && !(Target.Habits.IsOftenBlank(number.Column) && row.Raw(number).IsEmpty);

    /// <summary>The fields of the first table that nobody claimed.</summary>
    protected PlainFields Plain() => new([.. FieldCatalog.Of(_kind).Where(f => f.Table == "staged_" + _kind && f.Staged.Count > 0 && !_claimed.Contains(f.Name))], Target, Table);

    /// <summary>Makes a further table.</summary>
    protected StagedTable NewTable(string name)
    {
        var table = new StagedTable(Target.Files.For(name), StagedSchema.Columns(name), Target.Tools.Key);
        _tables.Add(table);
        return table;
    }

    /// <summary>
    /// Digest of the row's text, of which its hash is made: the same text in the same fields and under the same unread headers
    /// gives the same one, wherever it stands. Unread cells count, so that two calls are never merged because the column that
    /// tells them apart is not read.
    /// </summary>
    protected UInt128 RowDigest(MappedRow row)
    {
        // With the first row every field has been asked for.
        int length = 0;
        if (_fields is null)
        {
            _fields = [.. Target.Map.Used];
            _columns = OwnColumns(_fields);
            _unread = [.. Target.Map.Unread];
        }

        if (row.IsPlain && _columns is not null)
        {
            AppendPlain(row.Cells, _columns, ref length);
        }
        else
        {
            foreach (MappedField field in _fields)
            {
                Append(row.Raw(field), ref length);
            }
        }

        AppendUnread(row, ref length);
        return IdentityKey.Digest(IdentityRealm.Row, _rowText.AsSpan(0, length));
    }

    private void AppendUnread(MappedRow row, ref int length)
    {
        foreach (UnreadColumn column in _unread)
        {
            ReadOnlySpan<char> cell = row.Cells[column.Index].Trim();
            if (!cell.IsEmpty)
            {
                Append(column.Header, ref length);
                Append(cell, ref length);
            }
        }

        Append(Target.Map.JobPrefix, ref length);
        Append(Target.Map.Supplier, ref length);
    }

    /// <summary>The same without some fields: rows that differ in those alone have the same one.</summary>
    protected UInt128 RowDigest(MappedRow row, IReadOnlyList<MappedField> without)
    {
        int length = 0;
        foreach (MappedField field in Target.Map.Used)
        {
            Append(without.Contains(field) ? default : row.Raw(field), ref length);
        }

        AppendUnread(row, ref length);
        return IdentityKey.Digest(IdentityRealm.Row, _rowText.AsSpan(0, length));
    }

    /// <summary>Ends the row of the first table.</summary>
    protected void EndRow(MappedRow row, UInt128 digest)
    {
        _hashes.Set(Table.At, digest);
        _lines.Set(Table.At, row.Line);
        Table.EndRow();
    }

    // Null where a field is joined from cells, has a fixed value, or shares a cell with another.
    private static int[]? OwnColumns(MappedField[] fields)
    {
        int[] columns = [.. fields.Select(f => f.Fixed is null ? f.Column : -1)];
        return columns.All(c => c >= 0) && columns.Distinct().Count() == columns.Length ? columns : null;
    }

    // Most rows: every field is a cell of its own, and so all of them are no longer than the row.
    private void AppendPlain(RowCells cells, int[] columns, ref int length)
    {
        ReadOnlySpan<char> characters = cells.Characters;
        ReadOnlySpan<CellPlace> places = cells.Places;
        Reserve(length + characters.Length + columns.Length);
        Span<char> text = _rowText;
        foreach (int column in columns)
        {
            CellPlace place = (uint)column < (uint)places.Length ? places[column] : default;
            ReadOnlySpan<char> cell = characters.Slice(place.Start, place.Length).Trim();
            cell.CopyTo(text[length..]);
            length += cell.Length;
            text[length++] = FieldEnd;
        }
    }

    private void Append(ReadOnlySpan<char> text, ref int length)
    {
        Reserve(length + text.Length + 1);
        text.CopyTo(_rowText.AsSpan(length));
        length += text.Length;
        _rowText[length++] = FieldEnd;
    }

    private void Reserve(int length)
    {
        if (length > _rowText.Length)
        {
            Array.Resize(ref _rowText, Math.Max(_rowText.Length * 2, length));
        }
    }
}
