using System.IO.Compression;
using Parquet;
using Parquet.Schema;

namespace PartsSignal.Pipeline.Staging;

/// <summary>The Parquet file of one staged table: takes groups of rows, one after the other.</summary>
/// <param name="name">Name of the table.</param>
/// <param name="folder">Folder of the file, which is made with the first group.</param>
internal sealed class StagedTableFile(string name, string folder) : IAsyncDisposable
{
    private readonly string _path = Path.Combine(folder, name + ".parquet");
    private PageStream? _file;
    private ParquetWriter? _writer;
    private DataField[] _fields = [];

    /// <summary>Rows so far.</summary>
    public long Rows { get; private set; }

    /// <summary>Writes one group.</summary>
    /// <param name="columns">All columns, the same ones and in the same order each time.</param>
    /// <param name="rows">How many of their rows.</param>
    /// <param name="cancellation">Stops; the file is then of no use.</param>
    public async Task WriteGroupAsync(IReadOnlyList<StagedColumn> columns, int rows, CancellationToken cancellation)
    {
        if (_writer is null)
        {
            _file = new PageStream(_path);
            _fields = [.. columns.Select(c => c.Field)];
            _writer = await ParquetWriter.CreateAsync(new ParquetSchema(_fields), _file, Options(columns), cancellationToken: cancellation).ConfigureAwait(false);
        }

        using ParquetRowGroupWriter group = _writer.CreateRowGroup();
        for (int i = 0; i < _fields.Length; i++)
        {
            await columns[i].WriteAsync(group, _fields[i], rows, cancellation).ConfigureAwait(false);
        }

        group.CompleteValidate();
        Rows += rows;
    }

    /// <summary>Closes the file.</summary>
    /// <returns>Its path; null where there was no row.</returns>
    public async Task<string?> CompleteAsync()
    {
        await DisposeAsync().ConfigureAwait(false);
        return Rows == 0 ? null : _path;
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
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

    private static ParquetOptions Options(IReadOnlyList<StagedColumn> columns)
    {
        var options = new ParquetOptions
        {
            CompressionMethod = CompressionMethod.Snappy,
            CompressionLevel = CompressionLevel.Optimal,
            DictionaryEncodingThreshold = 0.5,
            MaximumSmallPoolFreeBytes = 1 << 24,
            MaximumLargePoolFreeBytes = 1 << 25,
        };
        foreach (StagedColumn column in columns.Where(c => c.Repeats))
        {
            options.ColumnEncodingHints[column.Field.Name] = EncodingHint.Dictionary;
        }

        return options;
    }
}

/// <summary>The Parquet files of one source, by table; whoever cleans its rows writes to the same ones in turn.</summary>
/// <param name="folder">Their folder.</param>
internal sealed class StagedTableFiles(string folder) : IAsyncDisposable
{
    private readonly Dictionary<string, StagedTableFile> _files = new(StringComparer.Ordinal);

    /// <summary>The file of a table.</summary>
    public StagedTableFile For(string table)
    {
        if (!_files.TryGetValue(table, out StagedTableFile? file))
        {
            file = new StagedTableFile(table, folder);
            _files.Add(table, file);
        }

        return file;
    }

    /// <summary>Closes them.</summary>
    /// <returns>Names of the tables that have rows, in order.</returns>
    public async Task<IReadOnlyList<string>> CompleteAsync()
    {
        var names = new List<string>();
        foreach ((string name, StagedTableFile file) in _files.OrderBy(f => f.Key, StringComparer.Ordinal))
        {
            if (await file.CompleteAsync().ConfigureAwait(false) is not null)
            {
                names.Add(name);
            }
        }

        return names;
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        foreach (StagedTableFile file in _files.Values)
        {
            await file.DisposeAsync().ConfigureAwait(false);
        }
    }
}
