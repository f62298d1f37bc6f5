using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Rejects;

namespace PartsSignal.Pipeline.Staging;

/// <summary>Cleans batches of rows, one at a time, beside other workers of the same file.</summary>
/// <param name="stager">Its own.</param>
/// <param name="row">Its own.</param>
/// <param name="width">Columns of the header.</param>
internal sealed class RowWorker(KindStager stager, MappedRow row, int width)
{
    private Task _last = Task.CompletedTask;

    /// <summary>Cells that could not be read and count as unknown.</summary>
    public IReadOnlyList<UnreadCells> Unread => row.Unread.ByField;

    /// <summary>Cleans a batch, then writes its rows once those of the batch before it are written.</summary>
    /// <param name="batch">The batch; nobody else's until the task ends.</param>
    /// <param name="before">The batch before it.</param>
    /// <param name="cancellation">Stops between batches.</param>
    /// <returns>The rows that were refused.</returns>
    public Task<CleanedBatch> StageAsync(RowBatch batch, Task before, CancellationToken cancellation)
    {
        Task mine = _last;
        Task<CleanedBatch> next = Task.Run(() => RunAsync(batch, mine, before, cancellation), cancellation);
        _last = next;
        return next;
    }

    private async Task<CleanedBatch> RunAsync(RowBatch batch, Task mine, Task before, CancellationToken cancellation)
    {
        await mine.ConfigureAwait(false);
        List<(int At, RejectedRow Row)> refused = Clean(batch);
        await before.ConfigureAwait(false);
        await stager.WriteGroupAsync(cancellation).ConfigureAwait(false);
        return new CleanedBatch(batch, refused);
    }

    private List<(int At, RejectedRow Row)> Clean(RowBatch batch)
    {
        var refused = new List<(int, RejectedRow)>();
        for (int i = 0; i < batch.Count; i++)
        {
            batch.Load(i, row.Cells);
            RowFault? fault = batch.Fault(i) ?? Shape();
            bool summary = fault is null && FooterRule.IsSummary(row.Cells, width);
            if (summary)
            {
                fault = new RowFault(null, ReasonCode.SummaryRow, "The row sums up others and is no data.", "Leave the row out.");
            }
            else if (fault is null)
            {
                row.Begin(batch.Line(i));
                stager.Stage(row);
                fault = row.Fault;
            }

            if (fault is not null)
            {
                refused.Add((i, Refused(batch, i, fault, summary)));
            }
        }

        return refused;
    }

    private RowFault? Shape()
    {
        RowCells cells = row.Cells;
        return cells.Count < width
            ? new RowFault(null, ReasonCode.TooFewCells, $"The row has {cells.Count} cells and the header {width}.", "Add the missing cells, empty ones too.")
            : cells.Count > width && cells.FilledCount() > width
                ? new RowFault(null, ReasonCode.TooManyCells, $"The row has {cells.Count} cells and the header {width}.", "Put text that holds the separator in quotation marks.")
                : null;
    }

    private RejectedRow Refused(RowBatch batch, int at, RowFault fault, bool summary)
    {
        RowCells cells = row.Cells;
        bool cut = batch.Fault(at) is null;
        string[] texts = cut ? cells.Texts() : [];
        bool footer = cut && (summary || FooterRule.IsFreeLine(cells, width) || FooterRule.IsShortLine(cells, width));
        return new RejectedRow(batch.Line(at), fault, texts, batch.RawText(at, cells), footer);
    }
}

/// <summary>A batch whose good rows are staged.</summary>
/// <param name="Batch">The batch.</param>
/// <param name="Refused">Its other rows, with their places in it, in order.</param>
internal sealed record CleanedBatch(RowBatch Batch, IReadOnlyList<(int At, RejectedRow Row)> Refused);
