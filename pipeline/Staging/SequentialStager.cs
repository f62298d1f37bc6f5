using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Rejects;

namespace PartsSignal.Pipeline.Staging;

/// <summary>
/// One thread cuts a row, cleans it while it is still near, and writes a group when it is full: the least work for a file
/// where there are others for the other cores.
/// </summary>
/// <param name="rows">The rows.</param>
/// <param name="cleaner">Cleans them; its current row is the reader's.</param>
/// <param name="gate">Where refused rows go.</param>
internal sealed class SequentialStager(DataRows rows, RowCleaner cleaner, FooterFilter gate)
{
    /// <summary>Reads to the end.</summary>
    public async Task RunAsync(CancellationToken cancellation)
    {
        while (Group(cancellation) is { Count: > 0 } group)
        {
            await cleaner.Stager.WriteGroupAsync(cancellation).ConfigureAwait(false);
            await gate.TakeAsync(group, cancellation).ConfigureAwait(false);
        }

        gate.End();
    }

    private CleanedRows Group(CancellationToken cancellation)
    {
        TableReader reader = rows.Reader;
        var refused = new List<(int, RejectedRow)>();
        int count = 0, characters = 0;
        while (!RowGroup.IsFull(count, characters) && rows.Next(cancellation))
        {
            characters += reader.Row.Characters.Length;
            if (cleaner.Stage(reader.Line, reader.Fault) is { } fault)
            {
                refused.Add((count, cleaner.Refused(reader.Line, reader.Fault, fault, reader.RawUtf8)));
            }

            count++;
        }

        return new CleanedRows(count, refused);
    }
}
