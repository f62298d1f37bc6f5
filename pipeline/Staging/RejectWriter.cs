using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Rejects;

namespace PartsSignal.Pipeline.Staging;

/// <summary>Writes the refused rows of one file twice: without their cells for the store, and as they were, for mending.</summary>
/// <param name="stageFolder">Folder of the row without cells.</param>
/// <param name="sourceFile">Name of the source.</param>
/// <param name="raw">The file for mending.</param>
internal sealed class RejectWriter(string stageFolder, string sourceFile, RejectFile raw) : IAsyncDisposable
{
    private readonly RejectTable _table = new(stageFolder);

    /// <summary>Rows so far.</summary>
    public long Rows => _table.Rows;

    /// <summary>Adds a row.</summary>
    public ValueTask AddAsync(RejectedRow row, CancellationToken cancellation)
    {
        raw.Add(row);
        return _table.AddAsync(sourceFile, row.Line, row.Fault, cancellation);
    }

    /// <summary>Lines so far that are not data.</summary>
    public long NotData { get; private set; }

    /// <summary>Adds a line that is not data: its text is kept, and the store's rejects know nothing of it.</summary>
    public void AddNotData(RejectedRow line)
    {
        raw.Add(line);
        NotData++;
    }

    /// <summary>Adds the lines above the header.</summary>
    public void AddTitles(IReadOnlyList<(int Line, string Text)> titles)
    {
        foreach ((int line, string text) in titles)
        {
            AddNotData(new RejectedRow(line, new RowFault(null, ReasonCode.NotData, "The line stands above the header.", null), [], text, MayBeFooter: false));
        }
    }

    /// <summary>Ends both files.</summary>
    /// <returns>Path of the Parquet file; null where no row was refused.</returns>
    public async Task<string?> CompleteAsync(CancellationToken cancellation)
    {
        await raw.CompleteAsync().ConfigureAwait(false);
        return await _table.CompleteAsync(cancellation).ConfigureAwait(false);
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        await raw.DisposeAsync().ConfigureAwait(false);
        await _table.DisposeAsync().ConfigureAwait(false);
    }
}
