using System.Globalization;
using System.Runtime.InteropServices;

namespace PartsSignal.Pipeline.Publishing;

/// <summary>
/// Swaps the current store of an output folder. Each store is a folder <c>stores/ID</c>; <c>store</c> is the current one.
/// Where symbolic links are available, <c>store</c> is a link and one rename swaps it. Elsewhere it is the folder itself
/// and the swap takes two renames; <see cref="Repair"/> completes a swap cut off between them.
/// </summary>
internal sealed class StoreSwap
{
    private const string Unfinished = ".unfinished";
    private readonly string _current;
    private readonly string _previous;
    private readonly string _next;
    private readonly bool _links;
    private readonly string? _later;

    /// <summary>The stores of one output folder.</summary>
    /// <param name="current">Path of the current store, <c>out/store</c>.</param>
    /// <param name="links">Whether to use links, or null to use them where the system allows.</param>
    /// <param name="later">The current store that will later <see cref="Adopt"/> these, so that new names do not collide with its own, or null if none.</param>
    public StoreSwap(string current, bool? links = null, string? later = null)
    {
        _later = later is null ? null : new StoreSwap(later, links).All;
        _current = Path.TrimEndingDirectorySeparator(Path.GetFullPath(current));
        _previous = _current + ".previous";
        _next = _current + ".next";
        All = Path.Combine(Path.GetDirectoryName(_current)!, "stores");
        _links = links ?? !OperatingSystem.IsWindows();
    }

    /// <summary>Folder that holds the stores.</summary>
    public string All { get; }

    /// <summary>The folder behind the current store. Each reader resolves it once; a later load does not move it.</summary>
    public static string Resolve(string current) =>
        (Directory.Exists(current) ? Directory.ResolveLinkTarget(current, returnFinalTarget: true)?.FullName : null) ?? Path.GetFullPath(current);

    /// <summary>Recovers from a killed run: removes half-written stores and completes an interrupted swap.</summary>
    public void Repair()
    {
        if (!Exists(_current) && Directory.Exists(_previous))
        {
            Directory.Move(_previous, _current);
        }

        RemoveLink(_next);
        if (Directory.Exists(All))
        {
            foreach (string folder in Directory.EnumerateDirectories(All, "*" + Unfinished))
            {
                Directory.Delete(folder, recursive: true);
            }
        }
    }

    /// <summary>Removes every store but the current one. A reader that still uses an older one will fail.</summary>
    public void DropPrevious()
    {
        string kept = Resolve(_current);
        foreach (string folder in Directory.Exists(All) ? Directory.EnumerateDirectories(All).Where(f => Path.GetFullPath(f) != kept).ToList() : [])
        {
            Directory.Delete(folder, recursive: true);
        }

        if (Directory.Exists(_previous))
        {
            Directory.Delete(_previous, recursive: true);
        }
    }

    /// <summary>Creates an empty folder for a new store.</summary>
    public string Begin(DateTimeOffset now)
    {
        string stamp = now.UtcDateTime.ToString("yyyyMMdd'T'HHmmss", CultureInfo.InvariantCulture);
        int number = 1;
        string name;
        string folder;
        do
        {
            name = string.Create(CultureInfo.InvariantCulture, $"{stamp}-{number++:00}");
            folder = Path.Combine(All, name);
        }
        while (Directory.Exists(folder) || Directory.Exists(folder + Unfinished) || (_later is not null && Directory.Exists(Path.Combine(_later, name))));
        return Directory.CreateDirectory(folder + Unfinished).FullName;
    }

    /// <summary>Makes a filled folder the current store; the previous one is kept for readers that still use it.</summary>
    public void Commit(string filled)
    {
        string complete = filled[..^Unfinished.Length];
        Directory.Move(filled, complete);
        MakeCurrent(complete);
    }

    /// <summary>
    /// Moves the current store of another output folder here, if it has one, and makes it current. Can be interrupted
    /// and called again.
    /// </summary>
    public void Adopt(StoreSwap draft)
    {
        if (!Exists(draft._current))
        {
            return;
        }

        if (new DirectoryInfo(draft._current).LinkTarget is not { } link)
        {
            MakeCurrent(draft._current);
            return;
        }

        string from = Path.Combine(draft.All, Path.GetFileName(link));
        string to = Path.Combine(All, Path.GetFileName(link));
        if (Directory.Exists(from))
        {
            Directory.CreateDirectory(All);
            Directory.Move(from, to);
        }

        MakeCurrent(to);
        RemoveLink(draft._current);
        if (Directory.Exists(draft.All))
        {
            Directory.Delete(draft.All, recursive: true);
        }
    }

    private void MakeCurrent(string complete)
    {
        string? before = Exists(_current) ? Resolve(_current) : null;
        if (_links)
        {
            SwapLink(complete);
        }
        else
        {
            SwapFolders(complete);
        }

        foreach (string old in !Directory.Exists(All) ? [] : Directory.EnumerateDirectories(All).Where(d => d != complete && d != before).ToList())
        {
            Directory.Delete(old, recursive: true);
        }
    }

    private void SwapLink(string complete)
    {
        if (Directory.Exists(_current) && new DirectoryInfo(_current).LinkTarget is null)
        {
            Directory.Move(_current, Path.Combine(All, "before-links"));
        }

        RemoveLink(_next);
        Directory.CreateSymbolicLink(_next, Path.Combine("stores", Path.GetFileName(complete)));
        if (Rename(_next, _current) != 0)
        {
            throw new IOException($"{_current}: cannot be replaced, error {Marshal.GetLastPInvokeError()}. Is something else there?");
        }
    }

    private void SwapFolders(string complete)
    {
        if (Directory.Exists(_previous))
        {
            Directory.Delete(_previous, recursive: true);
        }

        if (Directory.Exists(_current))
        {
            Directory.Move(_current, _previous);
        }

        Directory.Move(complete, _current);
    }

    private static bool Exists(string path) => Directory.Exists(path) || new FileInfo(path).LinkTarget is not null;

    private static void RemoveLink(string path)
    {
        if (new FileInfo(path).LinkTarget is not null)
        {
            File.Delete(path);
        }
    }

    // File.Move rejects a link to a folder and Directory.Move does not replace, so call the system's atomic rename.
    [DllImport("libc", EntryPoint = "rename", SetLastError = true, CharSet = CharSet.Ansi, BestFitMapping = false, ThrowOnUnmappableChar = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Rename([MarshalAs(UnmanagedType.LPUTF8Str)] string from, [MarshalAs(UnmanagedType.LPUTF8Str)] string to);
}
