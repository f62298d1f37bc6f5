using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Publishing;

namespace PartsSignal.Pipeline.Running;

/// <summary>
/// Publishes everything a command writes to an output folder, or nothing. The command fills a draft folder; one rename
/// marks the draft complete, then each part moves into place. A kill before that rename changes nothing; after a later
/// kill, the next command that writes finishes the move. Only one command writes at a time.
/// </summary>
internal sealed class OutputTransaction : IDisposable
{
    private static readonly TimeSpan LockWait = TimeSpan.FromSeconds(30);
    private readonly StoreLock _lock;
    private readonly OutputFolder _target;
    private readonly string _draft;
    private readonly string _complete;
    private readonly string _replaced;

    private OutputTransaction(OutputFolder target, StoreLock held)
    {
        string root = Path.GetFullPath(target.Root);
        _lock = held;
        _target = target;
        _draft = Path.Combine(root, "draft");
        _complete = Path.Combine(root, "draft.complete");
        _replaced = Path.Combine(root, "draft.replaced");
        Folder = new OutputFolder(_draft, target);
    }

    /// <summary>The draft folder to write to.</summary>
    public OutputFolder Folder { get; }

    /// <summary>Waits for any other writing command, recovers from a killed one, and starts an empty draft.</summary>
    /// <exception cref="IOException">The other command did not finish in time; the message names it.</exception>
    public static async Task<OutputTransaction> BeginAsync(OutputFolder target, TimeProvider clock, CancellationToken cancellation)
    {
        MakePrivate(target.Root);
        StoreLock held = await StoreLock.TakeAsync(target.Root, LockWait, clock, cancellation).ConfigureAwait(false);
        OutputTransaction? draft = null;
        try
        {
            var making = new OutputTransaction(target, held);
            making.Repair();
            Directory.CreateDirectory(making._draft);
            return draft = making;
        }
        finally
        {
            if (draft is null)
            {
                held.Dispose();
            }
        }
    }

    /// <summary>Publishes the draft.</summary>
    public void Commit()
    {
        Directory.Move(_draft, _complete);
        Publish();
    }

    /// <summary>Discards an unpublished draft and releases the lock.</summary>
    public void Dispose()
    {
        Remove(_draft);
        Remove(_target.Spill);
        _lock.Dispose();
    }

    private static void MakePrivate(string root)
    {
        if (OperatingSystem.IsWindows())
        {
            Directory.CreateDirectory(root);
        }
        else
        {
            Directory.CreateDirectory(root, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        }
    }

    private void Repair()
    {
        new StoreSwap(_target.Store).Repair();
        if (Directory.Exists(_complete))
        {
            Publish();
        }

        Remove(_draft);
        Remove(_replaced);
        Remove(_target.Spill);
    }

    // Restartable: the rename that publishes a part also removes it from the draft.
    private void Publish()
    {
        string root = Path.GetFullPath(_target.Root);
        var draft = new OutputFolder(_complete);
        if (Directory.Exists(draft.Store) && !File.Exists(draft.Intermediate))
        {
            // A new store comes without its intermediate tables: those kept earlier belong to the old one.
            File.Delete(_target.Intermediate);
        }

        new StoreSwap(_target.Store).Adopt(new StoreSwap(draft.Store));
        foreach (string folder in Directory.EnumerateDirectories(_complete).Order(StringComparer.Ordinal).ToList())
        {
            string target = Path.Combine(root, Path.GetFileName(folder));
            if (folder == draft.Reports || folder == draft.Model)
            {
                Directory.CreateDirectory(target);
                foreach (string part in Directory.EnumerateFileSystemEntries(folder).Order(StringComparer.Ordinal).ToList())
                {
                    Replace(part, Path.Combine(target, Path.GetFileName(part)));
                }
            }
            else
            {
                Replace(folder, target);
            }
        }

        foreach (string file in Directory.EnumerateFiles(_complete).Order(StringComparer.Ordinal).ToList())
        {
            Replace(file, Path.Combine(root, Path.GetFileName(file)));
        }

        Remove(_complete);
        Remove(_replaced);
    }

    private void Replace(string part, string target)
    {
        if (!Directory.Exists(part))
        {
            File.Move(part, target, overwrite: true);
            return;
        }

        if (Directory.Exists(target))
        {
            Remove(_replaced);
            Directory.Move(target, _replaced);
        }

        Directory.Move(part, target);
    }

    private static void Remove(string folder)
    {
        if (Directory.Exists(folder))
        {
            Directory.Delete(folder, recursive: true);
        }
    }
}
