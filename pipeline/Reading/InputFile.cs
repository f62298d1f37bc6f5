using System.IO.Compression;
using PartsSignal.Pipeline.Commands;

namespace PartsSignal.Pipeline.Reading;

/// <summary>One file as the shop gave it: plain, packed with gzip, or an entry of a zip.</summary>
/// <param name="Name">Name for people and for the store: relative to the input folder, with slashes; an entry follows its zip.</param>
/// <param name="Path">The file on disk.</param>
/// <param name="Entry">Full name of the entry within a zip; null: the file itself.</param>
public sealed record InputFile(string Name, string Path, string? Entry)
{
    /// <summary>Name without the ending of the packing, for telling the form.</summary>
    public string InnerName => Name.EndsWith(".gz", StringComparison.OrdinalIgnoreCase) ? Name[..^3] : Name;

    /// <summary>True for workbooks.</summary>
    public bool IsWorkbook => HasEnding(InnerName, ".xlsx") || HasEnding(InnerName, ".xlsm") || HasEnding(InnerName, ".xls");

    /// <summary>Bytes on disk, of the whole zip for an entry.</summary>
    public long Size => new FileInfo(Path).Length;

    /// <summary>Opens the unpacked bytes under the limits.</summary>
    /// <exception cref="BadInputException">The packing is broken or a limit is passed (also while reading).</exception>
    public Stream Open(ReadingLimits limits)
    {
        Stream file = new FileStream(Path, FileMode.Open, FileAccess.Read, FileShare.Read, 1 << 16, FileOptions.SequentialScan);
        if (Entry is not null)
        {
            return OpenEntry(file, limits);
        }

        return HasEnding(Name, ".gz")
            ? new UnpackGuard(new GZipStream(file, CompressionMode.Decompress), Name, file.Length, limits)
            : file;
    }

    private UnpackGuard OpenEntry(Stream file, ReadingLimits limits)
    {
        try
        {
            var zip = new ZipArchive(file, ZipArchiveMode.Read);
            ZipArchiveEntry entry = zip.GetEntry(Entry!) ?? throw new BadInputException($"{Name}: the zip has no entry '{Entry}'.");
            return new UnpackGuard(entry.Open(), Name, entry.CompressedLength, limits) { Owner = zip };
        }
        catch (InvalidDataException bad)
        {
            file.Dispose();
            throw new BadInputException($"{Name}: the zip cannot be read ({bad.Message}). Pack it again.");
        }
    }

    private static bool HasEnding(string name, string ending) => name.EndsWith(ending, StringComparison.OrdinalIgnoreCase);
}
