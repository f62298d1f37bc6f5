using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Publishing;

namespace PartsSignal.Pipeline.Running;

/// <summary>
/// Everything a command writes to an output folder, published at its end or not at all. The draft is filled beside what
/// is published; one rename says that it is complete, and then each part takes its place. A kill before that rename
/// leaves all as it was, a kill after it is made good by the next command that writes. One command at a time writes.
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

    /// <summary>Where to write.</summary>
    public OutputFolder Folder { get; }

    /// <summary>Waits for another command that writes, makes good what a killed one left, and starts an empty draft.</summary>
    /// <exception cref="IOException">The other command did not end in time; the message says who it is.</exception>
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

    /// <summary>Drops what was not published, and lets the next command write.</summary>
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

    // Each part leaves the draft by the rename that publishes it, so that this can be broken off and begun again.
    private void Publish()
    {
        string root = Path.GetFullPath(_target.Root);
        var draft = new OutputFolder(_complete);
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
