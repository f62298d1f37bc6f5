using System.IO.Compression;

namespace PartsSignal.Pipeline.Reading;

/// <summary>
/// A workbook saved as "Strict Open XML" (ISO/IEC 29500 Strict) names its parts by other addresses than the usual form
/// (Transitional), and is the same otherwise. The reader knows the usual ones only.
/// </summary>
internal static class StrictWorkbook
{
    private static readonly (byte[] Strict, byte[] Usual)[] Names =
    [
        ("http://purl.oclc.org/ooxml/spreadsheetml/main"u8.ToArray(), "http://schemas.openxmlformats.org/spreadsheetml/2006/main"u8.ToArray()),
        ("http://purl.oclc.org/ooxml/officeDocument/relationships"u8.ToArray(), "http://schemas.openxmlformats.org/officeDocument/2006/relationships"u8.ToArray()),
    ];

    /// <summary>The workbook in the usual form: itself, unless it is a strict one.</summary>
    /// <param name="workbook">A zip; closed where another takes its place.</param>
    public static MemoryStream AsUsual(MemoryStream workbook)
    {
        workbook.Position = 0;
        using var zip = new ZipArchive(workbook, ZipArchiveMode.Read, leaveOpen: true);
        if (zip.GetEntry("xl/workbook.xml") is not { } main || Bytes(main).AsSpan().IndexOf(Names[0].Strict) < 0)
        {
            return workbook;
        }

        var usual = new MemoryStream();
        using (var written = new ZipArchive(usual, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (ZipArchiveEntry part in zip.Entries)
            {
                using Stream into = written.CreateEntry(part.FullName, CompressionLevel.Fastest).Open();
                into.Write(IsXml(part.FullName) ? Renamed(Bytes(part)) : Bytes(part));
            }
        }

        workbook.Dispose();
        return usual;
    }

    private static bool IsXml(string name) => name.EndsWith(".xml", StringComparison.OrdinalIgnoreCase) || name.EndsWith(".rels", StringComparison.OrdinalIgnoreCase);

    private static byte[] Bytes(ZipArchiveEntry part)
    {
        using Stream from = part.Open();
        var bytes = new MemoryStream();
        from.CopyTo(bytes);
        return bytes.ToArray();
    }

    private static byte[] Renamed(byte[] xml)
    {
        foreach ((byte[] strict, byte[] usual) in Names)
        {
            if (xml.AsSpan().IndexOf(strict) < 0)
            {
                continue;
            }

            var renamed = new MemoryStream(xml.Length + 1024);
            ReadOnlySpan<byte> rest = xml;
            for (int at = rest.IndexOf(strict); at >= 0; at = rest.IndexOf(strict))
            {
                renamed.Write(rest[..at]);
                renamed.Write(usual);
                rest = rest[(at + strict.Length)..];
            }

            renamed.Write(rest);
            xml = renamed.ToArray();
        }

        return xml;
    }
}
