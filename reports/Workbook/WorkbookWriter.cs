using System.IO.Compression;
using System.Text;
using System.Xml;

namespace PartsSignal.Reports.Workbook;

/// <summary>
/// Writes an Office Open XML workbook (ECMA-376): numbers as numbers, days as days, and text that starts like a formula kept
/// as text. The same sheets give the same bytes.
/// </summary>
public static class WorkbookWriter
{
    private const string Main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
    private const string Relations = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
    private const string Package = "http://schemas.openxmlformats.org/package/2006/relationships";

    // Zip entries carry a time; a fixed one keeps the bytes the same.
    private static readonly DateTimeOffset Stamp = new(2000, 1, 1, 0, 0, 0, TimeSpan.Zero);

    /// <summary>Writes a workbook.</summary>
    /// <param name="stream">Receives the bytes; must be writable.</param>
    /// <param name="sheets">The sheets, in order; at least one.</param>
    public static void Write(Stream stream, IReadOnlyList<WorkbookSheet> sheets)
    {
        IReadOnlyList<string> names = SheetNames.Unique([.. sheets.Select(s => s.Name)]);
        using var zip = new ZipArchive(stream, ZipArchiveMode.Create, leaveOpen: true);
        Part(zip, "[Content_Types].xml", w => ContentTypes(w, sheets.Count));
        Part(zip, "_rels/.rels", w => Links(w, [("rId1", "officeDocument", "xl/workbook.xml")]));
        Part(zip, "xl/workbook.xml", w => Book(w, names, sheets));
        Part(zip, "xl/_rels/workbook.xml.rels", w => Links(w,
            [.. sheets.Select((_, i) => ($"rId{i + 1}", "worksheet", $"worksheets/sheet{i + 1}.xml")), ($"rId{sheets.Count + 1}", "styles", "styles.xml")]));
        Part(zip, "xl/styles.xml", w => CellStyles.Write(w, sheets.Any(s => s.Form is not null)));
        for (int i = 0; i < sheets.Count; i++)
        {
            WorkbookSheet sheet = sheets[i];
            Part(zip, $"xl/worksheets/sheet{i + 1}.xml", w => SheetXml.Write(w, sheet));
        }
    }

    private static void Part(ZipArchive zip, string path, Action<XmlWriter> write)
    {
        ZipArchiveEntry entry = zip.CreateEntry(path, CompressionLevel.Optimal);
        entry.LastWriteTime = Stamp;
        using Stream stream = entry.Open();
        using var writer = XmlWriter.Create(stream, new XmlWriterSettings { Encoding = new UTF8Encoding(false) });
        write(writer);
    }

    private static void ContentTypes(XmlWriter writer, int sheets)
    {
        const string Types = "http://schemas.openxmlformats.org/package/2006/content-types";
        const string Kind = "application/vnd.openxmlformats-officedocument.spreadsheetml.";
        writer.WriteStartElement("Types", Types);
        Default("rels", "application/vnd.openxmlformats-package.relationships+xml");
        Default("xml", "application/xml");
        Override("/xl/workbook.xml", Kind + "sheet.main+xml");
        Override("/xl/styles.xml", Kind + "styles+xml");
        for (int i = 1; i <= sheets; i++)
        {
            Override($"/xl/worksheets/sheet{i}.xml", Kind + "worksheet+xml");
        }

        writer.WriteEndElement();

        void Default(string extension, string type) => Entry("Default", "Extension", extension, type);

        void Override(string part, string type) => Entry("Override", "PartName", part, type);

        void Entry(string element, string key, string value, string type)
        {
            writer.WriteStartElement(element, Types);
            writer.WriteAttributeString(key, value);
            writer.WriteAttributeString("ContentType", type);
            writer.WriteEndElement();
        }
    }

    private static void Links(XmlWriter writer, IReadOnlyList<(string Id, string Kind, string Target)> links)
    {
        writer.WriteStartElement("Relationships", Package);
        foreach ((string id, string kind, string target) in links)
        {
            writer.WriteStartElement("Relationship", Package);
            writer.WriteAttributeString("Id", id);
            writer.WriteAttributeString("Type", $"{Relations}/{kind}");
            writer.WriteAttributeString("Target", target);
            writer.WriteEndElement();
        }

        writer.WriteEndElement();
    }

    private static void Book(XmlWriter writer, IReadOnlyList<string> names, IReadOnlyList<WorkbookSheet> sheets)
    {
        writer.WriteStartElement("workbook", Main);
        writer.WriteStartElement("sheets", Main);
        for (int i = 0; i < names.Count; i++)
        {
            writer.WriteStartElement("sheet", Main);
            writer.WriteAttributeString("name", names[i]);
            writer.WriteAttributeString("sheetId", XmlConvert.ToString(i + 1));
            if (sheets[i].IsHidden)
            {
                writer.WriteAttributeString("state", "hidden");
            }

            writer.WriteAttributeString("r", "id", Relations, $"rId{i + 1}");
            writer.WriteEndElement();
        }

        writer.WriteEndElement();
        writer.WriteEndElement();
    }
}
