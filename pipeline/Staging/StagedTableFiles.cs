namespace PartsSignal.Pipeline.Staging;

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
