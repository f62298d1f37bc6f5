using System.IO.Compression;
using System.Xml;

namespace PartsSignal.Pipeline.Reading;

/// <summary>
/// Places of the cells of a sheet that hold a failed formula: the workbook reader gives them as empty. Only for
/// workbooks in Office Open XML (ECMA-376); <see cref="OldWorkbookErrors"/> does the same for the older binary form.
/// </summary>
internal static class WorkbookErrors
{
    private const string Relations = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
    private static readonly XmlReaderSettings Safe = new() { DtdProcessing = DtdProcessing.Prohibit, XmlResolver = null, IgnoreWhitespace = true };

    /// <summary>Row and column (from 0) of every failed cell of a sheet, with the error it shows.</summary>
    /// <param name="workbook">The workbook; left open.</param>
    /// <param name="sheet">Name of the sheet.</param>
    public static IReadOnlyDictionary<(int Row, int Column), string> Find(Stream workbook, string sheet)
    {
        var errors = new Dictionary<(int, int), string>();
        workbook.Position = 0;
        using (var zip = new ZipArchive(workbook, ZipArchiveMode.Read, leaveOpen: true))
        {
            if (PartOf(zip, sheet) is { } part)
            {
                Read(part, errors);
            }
        }

        workbook.Position = 0;
        return errors;
    }

    private static void Read(ZipArchiveEntry part, Dictionary<(int, int), string> errors)
    {
        using Stream stream = part.Open();
        using var xml = XmlReader.Create(stream, Safe);
        while (xml.Read())
        {
            if (xml.NodeType == XmlNodeType.Element && xml.LocalName == "c" && xml.GetAttribute("t") == "e" && Place(xml.GetAttribute("r")) is { } place)
            {
                errors[place] = Value(xml);
            }
        }
    }

    private static string Value(XmlReader cell)
    {
        using XmlReader inner = cell.ReadSubtree();
        while (inner.Read())
        {
            if (inner.NodeType == XmlNodeType.Element && inner.LocalName == "v")
            {
                return inner.ReadElementContentAsString();
            }
        }

        return "#ERROR";
    }

    private static ZipArchiveEntry? PartOf(ZipArchive zip, string sheet)
    {
        string? id = Attribute(zip.GetEntry("xl/workbook.xml"), "sheet", x => x.GetAttribute("name") == sheet, x => x.GetAttribute("id", Relations));
        string? target = id is null ? null : Attribute(zip.GetEntry("xl/_rels/workbook.xml.rels"), "Relationship", x => x.GetAttribute("Id") == id, x => x.GetAttribute("Target"));
        return target is null ? null : zip.GetEntry(target.StartsWith('/') ? target[1..] : "xl/" + target);
    }

    private static string? Attribute(ZipArchiveEntry? part, string element, Func<XmlReader, bool> wanted, Func<XmlReader, string?> value)
    {
        if (part is null)
        {
            return null;
        }

        using Stream stream = part.Open();
        using var xml = XmlReader.Create(stream, Safe);
        while (xml.Read())
        {
            if (xml.NodeType == XmlNodeType.Element && xml.LocalName == element && wanted(xml))
            {
                return value(xml);
            }
        }

        return null;
    }

    private static (int Row, int Column)? Place(string? reference)
    {
        int column = 0;
        int i = 0;
        for (; i < reference?.Length && char.IsAsciiLetterUpper(reference[i]) && i < 4; i++)
        {
            column = (column * 26) + (reference[i] - 'A' + 1);
        }

        return i > 0 && int.TryParse(reference.AsSpan(i), System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out int row) ? (row - 1, column - 1) : null;
    }
}
