using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Rejects;

namespace PartsSignal.Pipeline.Staging;

/// <summary>Takes the rows of one table to the staged tables or to the rejects, and counts them.</summary>
internal sealed class RowLoop(OpenedTable table, KindStager stager, MappedRow row, RejectWriter rejects, Action<long, long> progress)
{
    private const int MostHeld = 100;
    private const int ProgressRows = 10_000;

    // Rows that are rejects, or footers if no good row follows.
    private readonly Queue<RejectedRow> _held = [];

    /// <summary>Rows that were staged or refused.</summary>
    public long Rows { get; private set; }

    /// <summary>Footer lines.</summary>
    public long Footers { get; private set; }

    /// <summary>Repeated headers.</summary>
    public long RepeatedHeaders { get; private set; }

    /// <summary>Reads to the end.</summary>
    public async Task RunAsync(CancellationToken cancellation)
    {
        while (table.Reader.Read())
        {
            if (table.Reader.Fault is null && (table.Reader.Row.IsBlank || IsRepeatedHeader()))
            {
                continue;
            }

            await OneAsync(cancellation).ConfigureAwait(false);
            if (Rows % ProgressRows == 0)
            {
                cancellation.ThrowIfCancellationRequested();
                progress(Rows, table.Reader.Position);
            }
        }

        await ReleaseAsync(atEnd: true, 0, cancellation).ConfigureAwait(false);
    }

    private bool IsRepeatedHeader()
    {
        bool repeated = FooterRule.IsHeader(table.Reader.Row, table.Header);
        RepeatedHeaders += repeated ? 1 : 0;
        return repeated;
    }

    private async ValueTask OneAsync(CancellationToken cancellation)
    {
        RowFault? fault = table.Reader.Fault ?? Shape();
        bool summary = fault is null && FooterRule.IsSummary(table.Reader.Row, table.Header.Count);
        if (fault is null && !summary)
        {
            row.Begin();
            await stager.StageAsync(row, cancellation).ConfigureAwait(false);
            fault = row.Fault;
        }
        else if (summary)
        {
            fault = new RowFault(null, ReasonCode.SummaryRow, "The row sums up others and is no data.", "Leave the row out.");
        }

        Rows++;
        if (fault is null)
        {
            if (_held.Count > 0)
            {
                await ReleaseAsync(atEnd: false, 0, cancellation).ConfigureAwait(false);
            }

            return;
        }

        _held.Enqueue(Refused(fault, summary));
        await ReleaseAsync(atEnd: false, MostHeld, cancellation).ConfigureAwait(false);
    }

    private RowFault? Shape()
    {
        RowCells cells = table.Reader.Row;
        int width = table.Header.Count;
        return cells.Count < width
            ? new RowFault(null, ReasonCode.TooFewCells, $"The row has {cells.Count} cells and the header {width}.", "Add the missing cells, empty ones too.")
            : cells.Count > width && cells.FilledCount() > width
                ? new RowFault(null, ReasonCode.TooManyCells, $"The row has {cells.Count} cells and the header {width}.", "Put text that holds the separator in quotation marks.")
                : null;
    }

    private RejectedRow Refused(RowFault fault, bool summary)
    {
        RowCells cells = table.Reader.Row;
        var texts = new string[table.Reader.Fault is null ? cells.Count : 0];
        for (int i = 0; i < texts.Length; i++)
        {
            texts[i] = cells[i].ToString();
        }

        bool footer = table.Reader.Fault is null && (summary || FooterRule.IsFreeLine(cells, table.Header.Count) || FooterRule.IsShortLine(cells, table.Header.Count));
        return new RejectedRow(table.Reader.Line, fault, texts, table.Reader.RawText, footer);
    }

    private async ValueTask ReleaseAsync(bool atEnd, int keep, CancellationToken cancellation)
    {
        while (_held.Count > keep)
        {
            RejectedRow held = _held.Dequeue();
            if (atEnd && held.MayBeFooter)
            {
                Footers++;
                Rows--;
            }
            else
            {
                await rejects.AddAsync(held, cancellation).ConfigureAwait(false);
            }
        }
    }
}
