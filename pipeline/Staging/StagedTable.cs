using Parquet.Schema;
using PartsSignal.Pipeline.Privacy;

namespace PartsSignal.Pipeline.Staging;

/// <summary>The rows of one staged table that are being gathered into a group.</summary>
internal sealed class StagedTable
{
    private const int FirstRows = 512;
    private readonly List<StagedColumn> _columns = [];
    private readonly WordScratch _scratch = new();
    private readonly StagedTableFile _file;
    private int _room = FirstRows;

    /// <summary>Prepares a table.</summary>
    /// <param name="file">Where its groups go.</param>
    public StagedTable(StagedTableFile file) => _file = file;

    /// <summary>Position of the row being filled.</summary>
    public int At { get; private set; }

    /// <summary>Adds a column of words that many rows share.</summary>
    public WordColumn Word(string name) => Add(new WordColumn(name, _room, _scratch));

    /// <summary>Adds a column of texts, written as they are.</summary>
    public TextColumn Text(string name) => Add(new TextColumn(name, _room));

    /// <summary>Adds a column of whole numbers.</summary>
    public ValueColumn<int> Int(string name) => Add(new ValueColumn<int>(new DataField<int>(name, true), _room));

    /// <summary>Adds a column of floating numbers.</summary>
    public ValueColumn<double> Double(string name) => Add(new ValueColumn<double>(new DataField<double>(name, true), _room));

    /// <summary>Adds a column of flags.</summary>
    public ValueColumn<bool> Flag(string name) => Add(new ValueColumn<bool>(new DataField<bool>(name, true), _room));

    /// <summary>Adds a column of money.</summary>
    public ValueColumn<decimal> Money(string name) => Add(new ValueColumn<decimal>(new DecimalDataField(name, 12, 2, isNullable: true), _room));

    /// <summary>Adds a column of days.</summary>
    public ValueColumn<DateOnly> Day(string name) => Add(new ValueColumn<DateOnly>(new DataField<DateOnly>(name, true), _room));

    /// <summary>Adds a column of days with time.</summary>
    public ValueColumn<DateTime> Time(string name) =>
        Add(new ValueColumn<DateTime>(new DateTimeDataField(name, DateTimeFormat.Timestamp, false, DateTimeTimeUnit.Micros, true), _room));

    /// <summary>Adds a column of digests, written as the identifiers that a key makes of them.</summary>
    public ValueColumn<UInt128> Identifier(string name, IdentityKey key) => Add(new IdentifierColumn(name, _room, key));

    /// <summary>Ends the row being filled.</summary>
    public void EndRow()
    {
        if (++At == _room)
        {
            _room *= 2;
            foreach (StagedColumn column in _columns)
            {
                column.Grow(_room);
            }
        }
    }

    /// <summary>Writes the rows gathered as one group and begins the next.</summary>
    public async Task WriteGroupAsync(CancellationToken cancellation)
    {
        if (At > 0)
        {
            await _file.WriteGroupAsync(_columns, At, cancellation).ConfigureAwait(false);
            At = 0;
        }
    }

    private T Add<T>(T column)
        where T : StagedColumn
    {
        _columns.Add(column);
        return column;
    }
}
