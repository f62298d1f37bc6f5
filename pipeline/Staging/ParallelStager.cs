using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Rejects;

namespace PartsSignal.Pipeline.Staging;

/// <summary>
/// One thread cuts rows, others clean them batch by batch: for a file that all cores share. How many there are changes
/// nothing in what is written.
/// </summary>
/// <param name="rows">The rows.</param>
/// <param name="workers">Who cleans; they take turns.</param>
/// <param name="gate">Where refused rows go.</param>
internal sealed class ParallelStager(DataRows rows, IReadOnlyList<RowWorker> workers, FooterFilter gate)
{
    private readonly Stack<RowBatch> _free = [];
    private readonly Queue<Task<(RowBatch Batch, CleanedRows Rows)>> _flying = [];

    /// <summary>Reads to the end.</summary>
    public async Task RunAsync(CancellationToken cancellation)
    {
        try
        {
            Task before = Task.CompletedTask;
            RowBatch? first = null;
            for (int turn = 0; Fill(_free.TryPop(out RowBatch? used) ? used : new RowBatch(first), cancellation) is { Count: > 0 } batch; turn++)
            {
                first ??= batch;
                Task<(RowBatch, CleanedRows)> next = workers[turn % workers.Count].StageAsync(batch, before, cancellation);
                _flying.Enqueue(next);
                before = next;
                await LandAsync(workers.Count, cancellation).ConfigureAwait(false);
            }

            await LandAsync(0, cancellation).ConfigureAwait(false);
            gate.End();
        }
        finally
        {
            // After a fault: nobody may still be writing when the files are closed.
            await ((Task)Task.WhenAll(_flying)).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }
    }

    private async ValueTask LandAsync(int keep, CancellationToken cancellation)
    {
        while (_flying.Count > keep)
        {
            (RowBatch batch, CleanedRows cleaned) = await _flying.Peek().ConfigureAwait(false);
            _ = _flying.Dequeue();
            await gate.TakeAsync(cleaned, cancellation).ConfigureAwait(false);
            batch.Clear();
            _free.Push(batch);
        }
    }

    private RowBatch Fill(RowBatch batch, CancellationToken cancellation)
    {
        while (!batch.IsFull && rows.Next(cancellation))
        {
            batch.Add(rows.Reader);
        }

        return batch;
    }
}

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
