using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Rejects;

namespace PartsSignal.Pipeline.Staging;

/// <summary>
/// Tells footers from refused rows: of the rows that may be footers, the last five are, where no other row follows. Rows
/// must come in file order.
/// </summary>
internal sealed class FooterFilter(RejectWriter rejects)
{
    private const int MostFooters = 5;
    private readonly Queue<RejectedRow> _held = [];
    private int _heldFooters;

    /// <summary>Rows that were staged or refused.</summary>
    public long Rows { get; private set; }

    /// <summary>Footer lines.</summary>
    public long Footers { get; private set; }

    /// <summary>Header lines repeated among the data.</summary>
    public long RepeatedHeaders { get; private set; }

    /// <summary>Takes the next rows.</summary>
    public async ValueTask TakeAsync(CleanedRows cleaned, CancellationToken cancellation)
    {
        int next = 0;
        foreach ((int at, RejectedRow row) in cleaned.Refused)
        {
            bool isHeader = row.Fault.Code == ReasonCode.NotData;
            await ReleaseAsync(at > next || !(isHeader || row.MayBeFooter) ? 0 : MostFooters, cancellation).ConfigureAwait(false);
            RepeatedHeaders += isHeader ? 1 : 0;
            Rows += isHeader ? 0 : 1;
            await HoldAsync(row, cancellation).ConfigureAwait(false);
            next = at + 1;
        }

        if (next < cleaned.Count)
        {
            await ReleaseAsync(0, cancellation).ConfigureAwait(false);
        }

        Rows += cleaned.Count - cleaned.Refused.Count;
    }

    /// <summary>Decides about what is still held.</summary>
    public void End()
    {
        while (_held.TryDequeue(out RejectedRow? held))
        {
            if (held.MayBeFooter)
            {
                Footers++;
                Rows--;
                rejects.AddNotData(held with { Fault = new RowFault(null, ReasonCode.NotData, "The line is a total or a note below the data.", null) });
            }
            else
            {
                rejects.AddNotData(held);
            }
        }
    }

    // Rows stand in the file for mending in the order of their source, so a repeated header waits behind what is held.
    private async ValueTask HoldAsync(RejectedRow row, CancellationToken cancellation)
    {
        _held.Enqueue(row);
        _heldFooters += row.MayBeFooter ? 1 : 0;
        await ReleaseAsync(row.MayBeFooter || row.Fault.Code == ReasonCode.NotData ? MostFooters : 0, cancellation).ConfigureAwait(false);
    }

    private async ValueTask ReleaseAsync(int footers, CancellationToken cancellation)
    {
        while (_held.TryPeek(out RejectedRow? oldest) && (footers == 0 || _heldFooters > footers || !oldest.MayBeFooter))
        {
            _held.Dequeue();
            _heldFooters -= oldest.MayBeFooter ? 1 : 0;
            if (oldest.Fault.Code == ReasonCode.NotData)
            {
                rejects.AddNotData(oldest);
            }
            else
            {
                await rejects.AddAsync(oldest, cancellation).ConfigureAwait(false);
            }
        }
    }
}
