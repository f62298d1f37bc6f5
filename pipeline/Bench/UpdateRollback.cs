using System.Globalization;
using PartsSignal.Pipeline.Publishing;

namespace PartsSignal.Pipeline.Bench;

/// <summary>
/// Going back to an earlier update: its files take the place of the present ones, and the figures are made from them. If that
/// does not end well, the present files come back, also after the program was killed: a note on disk says what was begun.
/// </summary>
/// <param name="shop">The shop.</param>
internal sealed class UpdateRollback(ShopFolder shop)
{
    private string Note => Path.Combine(shop.Folder, "going-back.txt");

    private string Fresh => shop.Files + ".new";

    private string Stamp => shop.FiguresStamp.ToString(CultureInfo.InvariantCulture);

    /// <summary>Sets the present files aside and puts others in their place. The caller holds the shop's lock.</summary>
    /// <param name="number">Number of the update to go back to.</param>
    /// <param name="fill">Puts the other files into a folder.</param>
    public void Begin(int number, Action<string> fill)
    {
        Delete(Fresh);
        Directory.CreateDirectory(Fresh);
        fill(Fresh);
        string aside = FreeName($"before-update-{number.ToString(CultureInfo.InvariantCulture)}");
        File.WriteAllLines(Note + ".part", [Path.GetFileName(aside), Stamp]);
        File.Move(Note + ".part", Note, overwrite: true);
        Directory.Move(shop.Files, aside);
        Directory.Move(Fresh, shop.Files);
    }

    /// <summary>The figures are made: the files stay as they are now.</summary>
    public void End() => File.Delete(Note);

    /// <summary>Puts the files back that were there before, if going back was begun and has not ended. Can be cut off and called again.</summary>
    /// <returns>True when they were put back.</returns>
    public bool Undo()
    {
        if (!File.Exists(Note))
        {
            return false;
        }

        string aside = Path.Combine(shop.Removed, Path.GetFileName(File.ReadLines(Note).First()));
        bool moved = Directory.Exists(aside);
        if (moved)
        {
            if (Directory.Exists(shop.Files))
            {
                // Kept, not deleted: somebody may have added a file meanwhile.
                Directory.Move(shop.Files, FreeName("not-gone-back-to"));
            }

            Directory.Move(aside, shop.Files);
        }

        Delete(Fresh);
        End();
        return moved;
    }

    /// <summary>The same, while nobody else writes to the shop. When somebody does, the next start of the program tries again.</summary>
    public async Task UndoAsync(TimeProvider clock)
    {
        if (!File.Exists(Note))
        {
            return;
        }

        try
        {
            using (await StoreLock.TakeAsync(shop.Output.Root, TimeSpan.Zero, clock, CancellationToken.None).ConfigureAwait(false))
            {
                Undo();
            }
        }
        catch (StoreBusyException)
        {
            // The note stays.
        }
    }

    /// <summary>When the program starts: ends what was done, and undoes what was not.</summary>
    public async Task RecoverAsync(TimeProvider clock)
    {
        // New figures were published since, so they were made from the files of now.
        if (File.Exists(Note) && File.ReadLines(Note).ElementAtOrDefault(1) is { } begun && begun != Stamp)
        {
            End();
        }

        await UndoAsync(clock).ConfigureAwait(false);
    }

    private string FreeName(string start)
    {
        string removed = Directory.CreateDirectory(shop.Removed).FullName;
        return Enumerable.Range(1, int.MaxValue).Select(i => Path.Combine(removed, $"{start}-{i.ToString(CultureInfo.InvariantCulture)}")).First(f => !Directory.Exists(f));
    }

    private static void Delete(string folder)
    {
        if (Directory.Exists(folder))
        {
            Directory.Delete(folder, recursive: true);
        }
    }
}
