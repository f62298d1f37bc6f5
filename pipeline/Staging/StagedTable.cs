using System.IO.Compression;
using Parquet;
using Parquet.Schema;

namespace PartsSignal.Pipeline.Staging;

/// <summary>
/// One staged table on its way into a Parquet file: rows are gathered into groups of bounded size, and a full group is
/// written while the next one fills.
/// </summary>
internal sealed class StagedTable : IAsyncDisposable
{
    /// <summary>Rows of one group.</summary>
    public const int GroupRows = 32_768;

    private static readonly ParquetOptions Options = new()
    {
        CompressionMethod = CompressionMethod.Snappy,
        CompressionLevel = CompressionLevel.Optimal,
        DictionaryEncodingThreshold = 0.5,
        MaximumSmallPoolFreeBytes = 1 << 24,
        MaximumLargePoolFreeBytes = 1 << 25,
    };

    private readonly List<StagedColumn> _columns = [];
    private readonly string _path;
    private Stream? _file;
    private ParquetWriter? _writer;
    private Task _writing = Task.CompletedTask;

    /// <summary>Prepares a table; the file is made with the first group.</summary>
    /// <param name="name">Name of the table.</param>
    /// <param name="folder">Folder of the file.</param>
    public StagedTable(string name, string folder)
    {
        Name = name;
        _path = Path.Combine(folder, name + ".parquet");
    }

    /// <summary>Name of the table.</summary>
    public string Name { get; }

    /// <summary>Rows so far.</summary>
    public long Rows { get; private set; }

    /// <summary>Position of the row being filled.</summary>
    public int At { get; private set; }

    /// <summary>Adds a column of text.</summary>
    public TextColumn Text(string name) => Add(new TextColumn(name, GroupRows));

    /// <summary>Adds a column of whole numbers.</summary>
    public ValueColumn<int> Int(string name) => Add(new ValueColumn<int>(new DataField<int>(name, true), GroupRows));

    /// <summary>Adds a column of floating numbers.</summary>
    public ValueColumn<double> Double(string name) => Add(new ValueColumn<double>(new DataField<double>(name, true), GroupRows));

    /// <summary>Adds a column of flags.</summary>
    public ValueColumn<bool> Flag(string name) => Add(new ValueColumn<bool>(new DataField<bool>(name, true), GroupRows));

    /// <summary>Adds a column of money.</summary>
    public ValueColumn<decimal> Money(string name) => Add(new ValueColumn<decimal>(new DecimalDataField(name, 12, 2, isNullable: true), GroupRows));

    /// <summary>Adds a column of days.</summary>
    public ValueColumn<DateOnly> Day(string name) => Add(new ValueColumn<DateOnly>(new DataField<DateOnly>(name, true), GroupRows));

    /// <summary>Adds a column of days with time.</summary>
    public ValueColumn<DateTime> Time(string name) =>
        Add(new ValueColumn<DateTime>(new DateTimeDataField(name, DateTimeFormat.Timestamp, false, DateTimeTimeUnit.Micros, true), GroupRows));

    /// <summary>Ends the row being filled.</summary>
    public async ValueTask EndRowAsync(CancellationToken cancellation)
    {
        Rows++;
        At++;
        if (At == GroupRows)
        {
            await FlushAsync(cancellation).ConfigureAwait(false);
        }
    }

    /// <summary>Writes what is left and closes the file.</summary>
    /// <returns>Path of the file; null where there was no row.</returns>
    public async Task<string?> CompleteAsync(CancellationToken cancellation)
    {
        await FlushAsync(cancellation).ConfigureAwait(false);
        await _writing.ConfigureAwait(false);
        await DisposeAsync().ConfigureAwait(false);
        return Rows == 0 ? null : _path;
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        await _writing.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        if (_writer is not null)
        {
            await _writer.DisposeAsync().ConfigureAwait(false);
            _writer = null;
        }

        if (_file is not null)
        {
            await _file.DisposeAsync().ConfigureAwait(false);
            _file = null;
        }
    }

    private T Add<T>(T column)
        where T : StagedColumn
    {
        _columns.Add(column);
        return column;
    }

    private async Task FlushAsync(CancellationToken cancellation)
    {
        await _writing.ConfigureAwait(false);
        if (At == 0)
        {
            return;
        }

        foreach (StagedColumn column in _columns)
        {
            column.Swap();
        }

        int count = At;
        At = 0;
        _writing = Task.Run(() => WriteAsync(count, cancellation), cancellation);
    }

    private async Task WriteAsync(int count, CancellationToken cancellation)
    {
        if (_writer is null)
        {
            _file = new FileStream(_path, FileMode.Create, FileAccess.ReadWrite, FileShare.None, 1 << 16);
            var schema = new ParquetSchema(_columns.Select(c => (Field)c.Field));
            _writer = await ParquetWriter.CreateAsync(schema, _file, Options, cancellationToken: cancellation).ConfigureAwait(false);
        }

        using ParquetRowGroupWriter group = _writer.CreateRowGroup();
        foreach (StagedColumn column in _columns)
        {
            await column.WriteAsync(group, count, cancellation).ConfigureAwait(false);
        }

        group.CompleteValidate();
    }
}
