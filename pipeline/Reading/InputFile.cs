using System.IO.Compression;

namespace PartsSignal.Pipeline.Reading;

/// <summary>One file as the shop gave it: plain, packed with gzip, or an entry of a zip.</summary>
/// <param name="Name">Name for people and for the store: relative to the input folder, with slashes; an entry follows its zip.</param>
/// <param name="Path">The file on disk.</param>
/// <param name="Entry">Full name of the entry within a zip; null: the file itself.</param>
internal sealed record InputFile(string Name, string Path, string? Entry)
{
    private const int UsualRatio = 3;

    /// <summary>Why the file may not be opened; null: it may.</summary>
    public RowFault? Fault { get; init; }

    /// <summary>Name without the ending of the packing, for telling the form.</summary>
    public string InnerName => Name.EndsWith(".gz", StringComparison.OrdinalIgnoreCase) ? Name[..^3] : Name;

    /// <summary>True for workbooks.</summary>
    public bool IsWorkbook => HasEnding(InnerName, ".xlsx") || HasEnding(InnerName, ".xlsm") || HasEnding(InnerName, ".xlsb") || HasEnding(InnerName, ".ods") || HasEnding(InnerName, ".xls");

    /// <summary>Bytes of an entry, unpacked, as its zip states them; null: no entry.</summary>
    public long? EntryBytes { get; init; }

    /// <summary>About how many bytes there are to read: those of an entry or of a plain file, and of one packed with gzip as many as it usually unpacks to; 0 where it is gone.</summary>
    public long Weight
    {
        get
        {
            var file = new FileInfo(Path);
            return EntryBytes ?? (file.Exists ? file.Length * (HasEnding(Name, ".gz") ? UsualRatio : 1) : 0);
        }
    }

    /// <summary>Opens the unpacked bytes under the limits.</summary>
    /// <exception cref="FileRefusedException">It cannot be read, its packing is broken, or a limit is passed (also while reading).</exception>
    public Stream Open(ReadingLimits limits)
    {
        if (Fault is not null)
        {
            throw new FileRefusedException(Name, Fault);
        }

        FileStream file = OpenFile();
        return Entry is not null ? OpenEntry(file, limits)
            : HasEnding(Name, ".gz") ? new GuardedStream(new GZipStream(file, CompressionMode.Decompress), Name, file.Length, limits)
            : new GuardedStream(file, Name, packedBytes: null, limits);
    }

    private FileStream OpenFile()
    {
        try
        {
            return new FileStream(Path, FileMode.Open, FileAccess.Read, FileShare.Read, 1 << 16, FileOptions.SequentialScan);
        }
        catch (Exception gone) when (gone is FileNotFoundException or DirectoryNotFoundException)
        {
            throw new FileRefusedException(Name, FileFaults.Gone);
        }
        catch (Exception closed) when (closed is IOException or UnauthorizedAccessException)
        {
            throw new FileRefusedException(Name, FileFaults.Unreadable);
        }
    }

    private GuardedStream OpenEntry(FileStream file, ReadingLimits limits)
    {
        try
        {
            var zip = new ZipArchive(file, ZipArchiveMode.Read);
            ZipArchiveEntry entry = zip.GetEntry(Entry!) ?? throw new FileRefusedException(Name, FileFaults.Gone);
            return new GuardedStream(entry.Open(), Name, entry.CompressedLength, limits) { Owner = zip, Expected = (entry.Length, entry.Crc32) };
        }
        catch (Exception bad) when (bad is InvalidDataException or NotSupportedException)
        {
            file.Dispose();
            throw new FileRefusedException(Name, FileFaults.BrokenPacking(bad.Message));
        }
    }

    private static bool HasEnding(string name, string ending) => name.EndsWith(ending, StringComparison.OrdinalIgnoreCase);
}
