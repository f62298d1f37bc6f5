using System.IO.Compression;

namespace PartsSignal.Analysis.Prediction.OddsPipeline;

/// <summary>Writes an archive again so that the same entries always make the same bytes.</summary>
internal static class StableZip
{
    private static readonly DateTimeOffset Written = new(1980, 1, 1, 0, 0, 0, TimeSpan.Zero);

    /// <summary>Copies an archive: entries in ordinal order, one fixed time, no compression (the library has compressed the long ones itself).</summary>
    /// <param name="from">The archive; must seek.</param>
    /// <param name="to">Where it goes; left open.</param>
    public static void Copy(Stream from, Stream to)
    {
        using var source = new ZipArchive(from, ZipArchiveMode.Read, leaveOpen: true);
        using var target = new ZipArchive(to, ZipArchiveMode.Create, leaveOpen: true);
        foreach (ZipArchiveEntry entry in source.Entries.OrderBy(e => e.FullName.Replace('\\', '/'), StringComparer.Ordinal))
        {
            ZipArchiveEntry copy = target.CreateEntry(entry.FullName.Replace('\\', '/'), CompressionLevel.NoCompression);
            copy.LastWriteTime = Written;
            using Stream read = entry.Open(), write = copy.Open();
            read.CopyTo(write);
        }
    }
}
