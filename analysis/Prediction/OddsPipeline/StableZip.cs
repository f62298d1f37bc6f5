using System.IO.Compression;

namespace PartsSignal.Analysis.Prediction.OddsPipeline;

/// <summary>Writes an archive again so that the same entries always make the same bytes.</summary>
internal static class StableZip
{
    private const string BinaryTable = ".idv";

    private static readonly DateTimeOffset Written = new(1980, 1, 1, 0, 0, 0, TimeSpan.Zero);

    /// <summary>Copies an archive: entries in ordinal order, blocks of tables in order, one fixed time, no compression (the library has compressed the long ones itself).</summary>
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
            if (entry.FullName.EndsWith(BinaryTable, StringComparison.Ordinal))
            {
                using var table = new MemoryStream();
                read.CopyTo(table);
                write.Write(BlockOrder.Ordered(table.ToArray()));
            }
            else
            {
                read.CopyTo(write);
            }
        }
    }
}
