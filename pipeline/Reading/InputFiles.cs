using System.IO.Compression;
using System.IO.Enumeration;
using PartsSignal.Pipeline.Core;

namespace PartsSignal.Pipeline.Reading;

/// <summary>Finds the files that a pattern names in the input folder.</summary>
internal sealed class InputFiles
{
    private const int MaxDepth = 8;
    private readonly ReadingLimits _limits;
    private readonly List<InputFile> _all = [];

    /// <summary>Lists a folder once: files below it, and the entries of its zips, but no lock files of open workbooks.</summary>
    /// <exception cref="BadInputException">The folder is not there.</exception>
    public InputFiles(string folder, ReadingLimits limits)
    {
        _limits = limits;
        Folder = Path.GetFullPath(folder);
        if (!Directory.Exists(Folder))
        {
            throw new BadInputException($"{folder}: there is no such folder. Name the folder with the shop's files.");
        }

        List(new DirectoryInfo(Folder), "", 0);
    }

    /// <summary>The folder.</summary>
    public string Folder { get; }

    /// <summary>Files that a pattern names, in ordinal order of their names. Wildcards (* and ?) stay within one folder.</summary>
    /// <remarks>
    /// A file that may not be read (a link that leads out of the folder, a zip entry with a path trick, a broken zip)
    /// is named like any other and refuses to be opened.
    /// </remarks>
    public IReadOnlyList<InputFile> Find(string pattern)
    {
        string[] wanted = pattern.Replace('\\', '/').Split('/');
        return [.. _all.Where(f => Matches(f, wanted)).Select(Checked).OrderBy(f => f.Name, StringComparer.Ordinal)];
    }

    /// <summary>Everything that is there, for proposals.</summary>
    public IReadOnlyList<InputFile> All => [.. _all.OrderBy(f => f.Name, StringComparer.Ordinal)];

    /// <summary>One file by its path, with its entries where it is a zip.</summary>
    public static IReadOnlyList<InputFile> Single(string path, ReadingLimits limits)
    {
        var file = new FileInfo(path);
        return !file.Exists ? throw new BadInputException($"{path}: there is no such file.")
            : IsZip(file.Name) && file.LinkTarget is null ? [.. Entries(file, file.Name, limits).Select(Checked)]
            : [Checked(new InputFile(file.Name, file.FullName, null))];
    }

    // A pattern for the entries of a zip that cannot be listed names the zip.
    private static bool Matches(InputFile file, string[] wanted) => Matches(file.Name.Split('/'), wanted)
        || (file.Fault is not null && file.Entry is null && Matches(file.Name.Split('/'), wanted[..Math.Min(wanted.Length, file.Name.Count(c => c == '/') + 1)]));

    private static bool Matches(string[] name, string[] wanted) =>
        name.Length == wanted.Length && name.Zip(wanted).All(p => p.First == p.Second || FileSystemName.MatchesSimpleExpression(p.Second, p.First, ignoreCase: false));

    private static InputFile Checked(InputFile file)
    {
        bool trick = file.Entry is { } entry && (entry.Contains('\\') || entry.Contains(':') || entry.Split('/').Any(s => s is "" or "." or ".."));
        return new FileInfo(file.Path).LinkTarget is not null ? file with { Fault = FileFaults.Link }
            : trick ? file with { Fault = FileFaults.EntryPath }
            : file;
    }

    // A spreadsheet program puts it beside a workbook that is open: ~$log.xlsx. It ends like one and is none.
    private static bool IsLock(string name) => name.StartsWith("~$", StringComparison.Ordinal);

    private static bool IsZip(string name) => name.EndsWith(".zip", StringComparison.OrdinalIgnoreCase);

    private void List(DirectoryInfo folder, string prefix, int depth)
    {
        foreach (FileInfo file in folder.EnumerateFiles().Where(f => !IsLock(f.Name)))
        {
            string name = prefix + file.Name;
            if (IsZip(name) && file.LinkTarget is null)
            {
                _all.AddRange(Entries(file, name, _limits));
            }
            else
            {
                _all.Add(new InputFile(name, file.FullName, null));
            }
        }

        foreach (DirectoryInfo inner in folder.EnumerateDirectories())
        {
            if (depth < MaxDepth && inner.LinkTarget is null)
            {
                List(inner, prefix + inner.Name + "/", depth + 1);
            }
        }
    }

    private static IEnumerable<InputFile> Entries(FileInfo file, string name, ReadingLimits limits)
    {
        try
        {
            using ZipArchive zip = ZipFile.OpenRead(file.FullName);
            return zip.Entries.Count > limits.MaxEntries
                ? Refused(FileFaults.TooLarge($"The zip holds {zip.Entries.Count} entries; the limit is {limits.MaxEntries}.", "maxEntries"))
                : [.. zip.Entries.Where(e => e.Name.Length > 0 && !IsLock(e.Name)).Select(e => new InputFile($"{name}/{e.FullName}", file.FullName, e.FullName) { EntryBytes = e.Length })];
        }
        catch (InvalidDataException bad)
        {
            return Refused(FileFaults.BrokenPacking(bad.Message));
        }
        catch (Exception bad) when (bad is IOException or UnauthorizedAccessException)
        {
            return Refused(bad is FileNotFoundException ? FileFaults.Gone : FileFaults.Unreadable);
        }

        InputFile[] Refused(RowFault fault) => [new InputFile(name, file.FullName, null) { Fault = fault }];
    }
}
