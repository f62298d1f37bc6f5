using PartsSignal.Pipeline.Rejects;

namespace PartsSignal.Pipeline.Staging;

/// <summary>
/// Separates footers from rejects: a row that may be a footer is one if no good row follows. Rows must come in file order.
/// </summary>
internal sealed class FooterFilter(RejectWriter rejects)
{
    private const int MostHeld = 100;
    private readonly Queue<RejectedRow> _held = [];

    /// <summary>Rows that were staged or refused.</summary>
    public long Rows { get; private set; }

    /// <summary>Footer lines.</summary>
    public long Footers { get; private set; }

    /// <summary>Takes the next rows.</summary>
    public async ValueTask TakeAsync(CleanedRows cleaned, CancellationToken cancellation)
    {
        int next = 0;
        foreach ((int at, RejectedRow row) in cleaned.Refused)
        {
            await ReleaseAsync(at > next ? 0 : MostHeld, cancellation).ConfigureAwait(false);
            _held.Enqueue(row);
            await ReleaseAsync(MostHeld, cancellation).ConfigureAwait(false);
            next = at + 1;
        }

        if (next < cleaned.Count)
        {
            await ReleaseAsync(0, cancellation).ConfigureAwait(false);
        }

        Rows += cleaned.Count;
    }

    /// <summary>Decides about what is still held.</summary>
    public async ValueTask EndAsync(CancellationToken cancellation)
    {
        while (_held.TryDequeue(out RejectedRow? held))
        {
            if (held.MayBeFooter)
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

    private async ValueTask ReleaseAsync(int keep, CancellationToken cancellation)
    {
        while (_held.Count > keep)
        {
            await rejects.AddAsync(_held.Dequeue(), cancellation).ConfigureAwait(false);
        }
    }
}
