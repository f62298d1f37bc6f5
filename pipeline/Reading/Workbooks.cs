using System.IO.Compression;
using PartsSignal.Pipeline.Core;

namespace PartsSignal.Pipeline.Reading;

/// <summary>Opens workbooks under the limits: they are held in memory, so their true size is counted first.</summary>
internal static class Workbooks
{
    private static readonly byte[] ZipMark = "PK"u8.ToArray();

    /// <summary>Reads a workbook once, for all of its sheets.</summary>
    /// <exception cref="FileRefusedException">It is larger than the limit, broken, or not what was scanned.</exception>
    public static Workbook Read(InputFile file, ContentScan scan, ReadingLimits limits) => new(file.Name, Bytes(file, scan, limits));

    private static MemoryStream Bytes(InputFile file, ContentScan scan, ReadingLimits limits)
    {
        using Stream bytes = new ScannedStream(file.Open(limits), file.Name, scan);
        var copy = new MemoryStream();
        CopyWithin(bytes, copy, file, limits);
        copy.Position = 0;
        if (copy.Length > 2 && copy.GetBuffer().AsSpan(0, 2).SequenceEqual(ZipMark))
        {
            CountEntries(copy, file, limits);
            copy = StrictWorkbook.AsUsual(copy);
            copy.Position = 0;
        }
        else if (IsProtected(copy))
        {
            throw new FileRefusedException(file.Name, FileFaults.Protected);
        }

        return copy;
    }

    // A workbook with a password is packed into a compound file ([MS-OFFCRYPTO], section 1.3.2).
    private static bool IsProtected(MemoryStream workbook)
    {
        try
        {
            return workbook.GetBuffer().AsSpan(0, (int)workbook.Length).StartsWith(TextTables.CompoundMark) && new CompoundFile(workbook.ToArray()).Find("EncryptedPackage") is not null;
        }
        catch (InvalidDataException)
        {
            return false;
        }
    }

    // What the zip says of its entries may be wrong; only unpacking tells.
    private static void CountEntries(MemoryStream workbook, InputFile file, ReadingLimits limits)
    {
        try
        {
            using var zip = new ZipArchive(workbook, ZipArchiveMode.Read, leaveOpen: true);
            if (zip.Entries.Count > limits.MaxEntries)
            {
                throw new FileRefusedException(file.Name, FileFaults.TooLarge($"The workbook holds {zip.Entries.Count} parts; the limit is {limits.MaxEntries}.", "maxEntries"));
            }

            RefuseOtherForms(zip, file);
            var sum = new CountingStream();
            foreach (ZipArchiveEntry entry in zip.Entries)
            {
                using Stream part = entry.Open();
                CopyWithin(part, sum, file, limits);
            }
        }
        catch (InvalidDataException bad)
        {
            throw new FileRefusedException(file.Name, FileFaults.BrokenWorkbook(bad.Message));
        }
    }

    private static void RefuseOtherForms(ZipArchive zip, InputFile file)
    {
        string? form = zip.GetEntry("xl/workbook.bin") is not null ? "a binary workbook (.xlsb)"
            : zip.GetEntry("content.xml") is not null ? "an OpenDocument spreadsheet (.ods)"
            : null;
        if (form is not null)
        {
            throw new FileRefusedException(file.Name, FileFaults.OtherWorkbook(form));
        }
    }

    private static void CopyWithin(Stream from, Stream to, InputFile file, ReadingLimits limits)
    {
        var block = new byte[1 << 16];
        int n;
        while ((n = from.Read(block)) > 0)
        {
            to.Write(block.AsSpan(0, n));
            if (to.Length > limits.MaxWorkbookBytes)
            {
                throw TooLarge(file, limits);
            }
        }
    }

    private static FileRefusedException TooLarge(InputFile file, ReadingLimits limits) =>
        new(file.Name, FileFaults.TooLarge($"The workbook unpacks to more than {limits.MaxWorkbookBytes} bytes; saved as CSV it could be larger.", "maxWorkbookBytes"));

    private sealed class CountingStream : MemoryStream
    {
        private long _length;

        public override long Length => _length;

        public override void Write(ReadOnlySpan<byte> buffer) => _length += buffer.Length;
    }
}

/// <summary>A workbook held in memory. Its sheets can be opened one after the other or at a time.</summary>
/// <param name="file">Its name, for faults.</param>
/// <param name="bytes">All of it.</param>
internal sealed class Workbook(string file, MemoryStream bytes)
{
    /// <summary>Opens a sheet at its top, or the first one that is shown.</summary>
    /// <exception cref="BadInputException">The workbook cannot be read, or has no such sheet.</exception>
    public WorkbookTable Open(string? sheet) => new(new MemoryStream(bytes.GetBuffer(), 0, (int)bytes.Length, writable: false), file, sheet);

    /// <summary>Names of the sheets that are shown, in order.</summary>
    /// <exception cref="BadInputException">The workbook cannot be read.</exception>
    public IReadOnlyList<string> Sheets()
    {
        using WorkbookTable table = Open(null);
        return table.RestOfSheets();
    }
}
