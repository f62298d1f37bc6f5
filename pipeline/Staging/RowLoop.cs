using PartsSignal.Pipeline.Reading;

namespace PartsSignal.Pipeline.Staging;

/// <summary>
/// Takes the rows of one table to the staged tables or to the rejects: one thread cuts rows, others clean them batch by
/// batch. How many there are changes nothing in what is written.
/// </summary>
/// <param name="table">The table.</param>
/// <param name="workers">Who cleans; they take turns.</param>
/// <param name="gate">Where refused rows go.</param>
/// <param name="free">Batches that no one uses; they go back there.</param>
/// <param name="progress">Told now and then how many rows and bytes were read.</param>
internal sealed class RowLoop(OpenedTable table, IReadOnlyList<RowWorker> workers, RejectGate gate, Stack<RowBatch> free, Action<long, long> progress)
{
    private const int ProgressRows = 10_000;
    private readonly Queue<Task<CleanedBatch>> _flying = [];
    private long _read;

    /// <summary>Header lines repeated among the data.</summary>
    public long RepeatedHeaders { get; private set; }

    /// <summary>Reads to the end.</summary>
    public async Task RunAsync(CancellationToken cancellation)
    {
        try
        {
            Task before = Task.CompletedTask;
            for (int turn = 0; Fill(free.TryPop(out RowBatch? used) ? used : new RowBatch(), cancellation) is { } batch; turn++)
            {
                Task<CleanedBatch> next = workers[turn % workers.Count].StageAsync(batch, before, cancellation);
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
            CleanedBatch cleaned = await _flying.Peek().ConfigureAwait(false);
            _ = _flying.Dequeue();
            await gate.TakeAsync(cleaned, cancellation).ConfigureAwait(false);
            cleaned.Batch.Clear();
            free.Push(cleaned.Batch);
        }
    }

    private RowBatch? Fill(RowBatch batch, CancellationToken cancellation)
    {
        while (!batch.IsFull && table.Reader.Read())
        {
            if (table.Reader.Fault is null && (table.Reader.Row.IsBlank || IsRepeatedHeader()))
            {
                continue;
            }

            batch.Add(table.Reader);
            if (++_read % ProgressRows == 0)
            {
                cancellation.ThrowIfCancellationRequested();
                progress(_read, table.Reader.Position);
            }
        }

        if (batch.Count > 0)
        {
            return batch;
        }

        free.Push(batch);
        return null;
    }

    private bool IsRepeatedHeader()
    {
        bool repeated = FooterRule.IsHeader(table.Reader.Row, table.Header);
        RepeatedHeaders += repeated ? 1 : 0;
        return repeated;
    }
}
