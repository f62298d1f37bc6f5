namespace PartsSignal.Pipeline.Running;

/// <summary>
/// Replaces a folder as a whole: the new one is filled beside it and takes its place by renaming, so a reader sees the
/// old files or the new ones, never a mixture. A kill between the two renames is made good the next time.
/// </summary>
public sealed class FolderSwap : IDisposable
{
    private readonly string _target;
    private readonly string _aside;

    /// <summary>Makes an empty folder beside the target.</summary>
    public FolderSwap(string target)
    {
        _target = Path.TrimEndingDirectorySeparator(Path.GetFullPath(target));
        _aside = _target + ".old";
        Filling = _target + ".new";
        if (!Directory.Exists(_target) && Directory.Exists(_aside))
        {
            Directory.Move(_aside, _target);
        }

        Remove(Filling);
        Remove(_aside);
        Directory.CreateDirectory(Filling);
    }

    /// <summary>The folder to fill.</summary>
    public string Filling { get; }

    /// <summary>Puts the filled folder in the target's place.</summary>
    public void Commit()
    {
        if (Directory.Exists(_target))
        {
            Directory.Move(_target, _aside);
        }

        Directory.Move(Filling, _target);
        Remove(_aside);
    }

    /// <summary>Drops what was not committed.</summary>
    public void Dispose() => Remove(Filling);

    private static void Remove(string folder)
    {
        if (Directory.Exists(folder))
        {
            Directory.Delete(folder, recursive: true);
        }
    }
}
