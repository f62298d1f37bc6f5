using Parquet.Schema;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Privacy;

namespace PartsSignal.Pipeline.Staging;

/// <summary>
/// The rows of one staged table that are being gathered into a group. Which file a row is from is known by where it
/// stands, and the reader adds it.
/// </summary>
internal sealed class StagedTable
{
    private const int FirstRows = 512;
    private readonly Dictionary<string, StagedColumn> _byName = new(StringComparer.Ordinal);
    private readonly HashSet<string> _unfilled = new(StringComparer.Ordinal);
    private readonly List<StagedColumn> _columns = [];
    private readonly WordScratch _scratch = new();
    private readonly StagedTableFile _file;
    private int _room = FirstRows;

    /// <summary>Prepares a table.</summary>
    /// <param name="file">Where its groups go.</param>
    /// <param name="columns">Its columns.</param>
    /// <param name="key">Turns digests into identifiers, or null if no column holds any.</param>
    public StagedTable(StagedTableFile file, IReadOnlyList<StagedColumnSpec> columns, IdentityKey? key)
    {
        _file = file;
        foreach (StagedColumnSpec column in columns)
        {
            Add(column, key);
        }
    }

    /// <summary>Position of the row being filled.</summary>
    public int At { get; private set; }

    /// <summary>A column of few words that many rows share.</summary>
    public WordColumn Word(string name) => Column<WordColumn>(name);

    /// <summary>A column of texts, written as they are.</summary>
    public TextColumn Text(string name) => Column<TextColumn>(name);

    /// <summary>A column of numbers, flags, days or digests.</summary>
    public ValueColumn<T> Value<T>(string name)
        where T : struct => Column<ValueColumn<T>>(name);

    /// <summary>Sets a cell of a column of words or of texts.</summary>
    public Action<int, string?> Setter(string name) => Find(name) switch
    {
        WordColumn words => words.Set,
        TextColumn texts => texts.Set,
        _ => throw new ArgumentException($"Column {name} holds no text.", nameof(name)),
    };

    /// <summary>Ends the row being filled.</summary>
    public void EndRow()
    {
        if (++At == _room)
        {
            _room = MoreRoom(_room);
            foreach (StagedColumn column in _columns)
            {
                column.Grow(_room);
            }
        }
    }

    /// <summary>Writes the rows gathered as one group and begins the next.</summary>
    public async Task WriteGroupAsync(CancellationToken cancellation)
    {
        if (At == 0)
        {
            return;
        }

        if (_unfilled.Count > 0)
        {
            throw new InvalidOperationException($"Nothing fills the staged columns {string.Join(", ", _unfilled)}.");
        }

        await _file.WriteGroupAsync(_columns, At, cancellation).ConfigureAwait(false);
        At = 0;
    }

    // A table with one line per row of the file never needs more than a group has rows, and the place behind them.
    private static int MoreRoom(int room) => room < RowGroup.MostRows ? Math.Min(room * 4, RowGroup.MostRows + 1) : room * 2;

    private StagedColumn Find(string name)
    {
        _unfilled.Remove(name);
        return _byName[name];
    }

    private T Column<T>(string name)
        where T : StagedColumn => (T)Find(name);

    private void Add(StagedColumnSpec spec, IdentityKey? key)
    {
        string name = spec.Name;
        StagedColumn column = spec.Type switch
        {
            ColumnType.Word => new WordColumn(name, _room, _scratch),
            ColumnType.Text => new TextColumn(name, _room),
            ColumnType.Identifier => new IdentifierColumn(name, _room, key ?? throw new ArgumentNullException(nameof(key))),
            ColumnType.Int => new ValueColumn<int>(new DataField<int>(name, true), _room),
            ColumnType.Double => new ValueColumn<double>(new DataField<double>(name, true), _room),
            ColumnType.Money => new ValueColumn<decimal>(new DecimalDataField(name, 12, 2, isNullable: true), _room),
            ColumnType.Flag => new ValueColumn<bool>(new DataField<bool>(name, true), _room),
            ColumnType.Day => new ValueColumn<DateOnly>(new DataField<DateOnly>(name, true), _room),
            ColumnType.Time => new ValueColumn<DateTime>(new DateTimeDataField(name, DateTimeFormat.Timestamp, false, DateTimeTimeUnit.Micros, true), _room),
            _ => throw new ArgumentException($"No column type {spec.Type}.", nameof(spec)),
        };
        _byName.Add(name, column);
        _unfilled.Add(name);
        _columns.Add(column);
    }
}
