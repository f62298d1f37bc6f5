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
            for (int turn = 0; Fill(_free.TryPop(out RowBatch? used) ? used : new RowBatch(), cancellation) is { Count: > 0 } batch; turn++)
            {
                Task<(RowBatch, CleanedRows)> next = workers[turn % workers.Count].StageAsync(batch, before, cancellation);
                _flying.Enqueue(next);
                before = next;
                await LandAsync(workers.Count, cancellation).ConfigureAwait(false);
            }

            await LandAsync(0, cancellation).ConfigureAwait(false);
            await gate.EndAsync(cancellation).ConfigureAwait(false);
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
