using System.Text;

namespace PartsSignal.Pipeline.Staging;

/// <summary>Turns the rows of one kind of file into staged rows.</summary>
internal abstract class KindStager : IAsyncDisposable
{
    private readonly StringBuilder _rowText = new();
    private readonly RowStamp _stamp;
    private readonly List<StagedTable> _tables = [];

    protected KindStager(StageTarget target, string table)
    {
        Target = target;
        Table = NewTable(table);
        _stamp = new RowStamp(Table, target);
    }

    /// <summary>Where rows go and what they are made with.</summary>
    protected StageTarget Target { get; }

    /// <summary>Table with a row per source row.</summary>
    protected StagedTable Table { get; }

    /// <summary>Tables that this kind fills.</summary>
    public IReadOnlyList<StagedTable> Tables => _tables;

    /// <summary>True when a job may stand on several rows.</summary>
    public virtual bool OnePartPerRow => false;

    /// <summary>Reads the row and adds it, unless it has a fault.</summary>
    public abstract ValueTask StageAsync(MappedRow row, CancellationToken cancellation);

    /// <summary>Ends all tables.</summary>
    /// <returns>Paths of the tables that have rows, by name.</returns>
    public async Task<Dictionary<string, string>> CompleteAsync(CancellationToken cancellation)
    {
        var paths = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (StagedTable table in _tables)
        {
            if (await table.CompleteAsync(cancellation).ConfigureAwait(false) is { } path)
            {
                paths.Add(table.Name, path);
            }
        }

        return paths;
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        foreach (StagedTable table in _tables)
        {
            await table.DisposeAsync().ConfigureAwait(false);
        }
    }

    /// <summary>Makes a further table.</summary>
    protected StagedTable NewTable(string name)
    {
        var table = new StagedTable(name, Target.Folder);
        _tables.Add(table);
        return table;
    }

    /// <summary>Identifier of the row's mapped text: the same text in the same fields gives the same one, wherever it stands.</summary>
    protected string RowHash(MappedRow row)
    {
        _rowText.Clear();
        foreach (MappedField field in Target.Map.Used)
        {
            _rowText.Append(row.Raw(field)).Append('\u001f');
        }

        _rowText.Append(Target.Map.JobPrefix).Append('\u001f').Append(Target.Map.Supplier);
        foreach (ReadOnlyMemory<char> chunk in _rowText.GetChunks())
        {
            if (chunk.Length == _rowText.Length)
            {
                return Target.Tools.Key.Identify("row", chunk.Span);
            }
        }

        return Target.Tools.Key.Identify("row", _rowText.ToString());
    }

    /// <summary>Ends the row of the first table.</summary>
    protected ValueTask EndRowAsync(MappedRow row, string rowHash, CancellationToken cancellation)
    {
        _stamp.Set(Table.At, rowHash, row.Line);
        return Table.EndRowAsync(cancellation);
    }
}
