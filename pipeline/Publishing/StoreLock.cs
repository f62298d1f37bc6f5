using System.Globalization;

namespace PartsSignal.Pipeline.Publishing;

/// <summary>Another program writes to the output folder.</summary>
internal sealed class StoreBusyException(string message) : IOException(message);

/// <summary>
/// Allows one writer at a time per output folder. The system releases the lock when the process ends, even if killed.
/// </summary>
internal sealed class StoreLock : IDisposable
{
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(200);
    private readonly FileStream _file;
    private readonly string _holder;

    private StoreLock(FileStream file, string holder) => (_file, _holder) = (file, holder);

    /// <summary>Takes the lock, waiting for another writer to finish.</summary>
    /// <param name="root">The output folder; created if missing.</param>
    /// <param name="wait">Longest wait; zero for no wait.</param>
    /// <param name="clock">The clock.</param>
    /// <param name="cancellation">Cancels the wait.</param>
    /// <exception cref="StoreBusyException">The other writer did not finish in time; the message names its process and start time.</exception>
    public static async Task<StoreLock> TakeAsync(string root, TimeSpan wait, TimeProvider clock, CancellationToken cancellation)
    {
        Directory.CreateDirectory(root);
        string path = PathOf(root);
        string holder = path + ".holder";
        long start = clock.GetTimestamp();
        while (true)
        {
            if (TryOpen(path) is { } file)
            {
                string who = string.Create(CultureInfo.InvariantCulture, $"process {Environment.ProcessId} since {clock.GetUtcNow():yyyy-MM-dd HH:mm:ss} UTC");
                await File.WriteAllTextAsync(holder, who, cancellation).ConfigureAwait(false);
                return new StoreLock(file, holder);
            }

            if (clock.GetElapsedTime(start) >= wait)
            {
                string who = File.Exists(holder) ? await File.ReadAllTextAsync(holder, cancellation).ConfigureAwait(false) : "another process";
                throw new StoreBusyException($"{root}: the store is being written by {who}. Wait for it to end, or choose another --out.");
            }

            await Task.Delay(Pause, clock, cancellation).ConfigureAwait(false);
        }
    }

    /// <summary>True while another process, or another part of this one, writes to an output folder.</summary>
    /// <param name="root">The output folder; it may be missing.</param>
    public static bool IsHeldAt(string root)
    {
        string path = PathOf(root);
        if (!File.Exists(path))
        {
            return false;
        }

        using FileStream? free = TryOpen(path);
        return free is null;
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        File.Delete(_holder);
        _file.Dispose();
    }

    // Error codes for a lock held by another process: EAGAIN on Linux and macOS, a sharing violation on Windows.
    private static bool IsHeld(IOException failure) => failure.HResult is 11 or 35 or unchecked((int)0x80070020);

    private static string PathOf(string root) => Path.Combine(root, "store.lock");

    private static FileStream? TryOpen(string path)
    {
        try
        {
            return new FileStream(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
        }
        catch (IOException held) when (IsHeld(held))
        {
            return null;
        }
    }
}
