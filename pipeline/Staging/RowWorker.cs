using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Rejects;

namespace PartsSignal.Pipeline.Staging;

/// <summary>Cleans batches of rows, one at a time, beside other workers of the same file.</summary>
/// <param name="cleaner">Its own.</param>
internal sealed class RowWorker(RowCleaner cleaner)
{
    private Task _last = Task.CompletedTask;

    /// <summary>Cleans a batch, then writes its rows once those of the batch before it are written.</summary>
    /// <param name="batch">The batch; nobody else's until the task ends.</param>
    /// <param name="before">The batch before it.</param>
    /// <param name="cancellation">Stops between batches.</param>
    /// <returns>The batch, and its rows that were refused.</returns>
    public Task<(RowBatch Batch, CleanedRows Rows)> StageAsync(RowBatch batch, Task before, CancellationToken cancellation)
    {
        Task mine = _last;
        Task<(RowBatch, CleanedRows)> next = Task.Run(() => RunAsync(batch, mine, before, cancellation), cancellation);
        _last = next;
        return next;
    }

    private async Task<(RowBatch Batch, CleanedRows Rows)> RunAsync(RowBatch batch, Task mine, Task before, CancellationToken cancellation)
    {
        await mine.ConfigureAwait(false);
        CleanedRows cleaned = Clean(batch);
        await before.ConfigureAwait(false);
        await cleaner.Stager.WriteGroupAsync(cancellation).ConfigureAwait(false);
        return (batch, cleaned);
    }

    private CleanedRows Clean(RowBatch batch)
    {
        var refused = new List<(int, RejectedRow)>();
        for (int i = 0; i < batch.Count; i++)
        {
            batch.Load(i, cleaner.Cells);
            RowFault? cut = batch.Fault(i);
            if (cleaner.Stage(batch.Line(i), cut) is { } fault)
            {
                refused.Add((i, cleaner.Refused(batch.Line(i), cut, fault, batch.Raw(i))));
            }
        }

        return new CleanedRows(batch.Count, refused);
    }
}
