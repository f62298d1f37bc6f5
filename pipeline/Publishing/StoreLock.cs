using System.Globalization;

namespace PartsSignal.Pipeline.Publishing;

/// <summary>
/// Lets one load at a time write below an output folder. The system frees the lock when its process ends, however it ends.
/// </summary>
internal sealed class StoreLock : IDisposable
{
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(200);
    private readonly FileStream _file;
    private readonly string _holder;

    private StoreLock(FileStream file, string holder) => (_file, _holder) = (file, holder);

    /// <summary>Takes the lock, waiting for another load to end.</summary>
    /// <param name="root">The output folder; made when missing.</param>
    /// <param name="wait">Longest wait; zero: none.</param>
    /// <param name="clock">The time.</param>
    /// <param name="cancellation">Ends the wait.</param>
    /// <exception cref="IOException">The other load did not end in time; the message says who it is and since when.</exception>
    public static async Task<StoreLock> TakeAsync(string root, TimeSpan wait, TimeProvider clock, CancellationToken cancellation)
    {
        Directory.CreateDirectory(root);
        string path = Path.Combine(root, "store.lock");
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
                throw new IOException($"{root}: the store is being written by {who}. Wait for it to end, or choose another --out.");
            }

            await Task.Delay(Pause, clock, cancellation).ConfigureAwait(false);
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        File.Delete(_holder);
        _file.Dispose();
    }

    // What the systems answer for a lock that another process holds: EAGAIN of Linux and of macOS, a sharing violation of Windows.
    private static bool IsHeld(IOException failure) => failure.HResult is 11 or 35 or unchecked((int)0x80070020);

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
