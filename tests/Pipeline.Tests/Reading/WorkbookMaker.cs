using System.IO.Compression;
using System.Text;

namespace PartsSignal.Pipeline.Tests.Reading;

/// <summary>Writes a one-sheet workbook cell by cell, so that a test can say exactly what is stored.</summary>
internal static class WorkbookMaker
{
    private const string Main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
    private const string Relations = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";

    /// <summary>Text cell.</summary>
    public static string Text(string text) => $"t=\"inlineStr\"><is><t xml:space=\"preserve\">{System.Security.SecurityElement.Escape(text)}</t></is>";

    /// <summary>Number cell with one of the styles: 0 general, 1 date, 2 scientific.</summary>
    public static string Number(string number, int style = 0) => $"s=\"{style}\"><v>{number}</v>";

    /// <summary>Formula cell with its stored value.</summary>
    public static string Formula(string formula, string value) => $"><f>{formula}</f><v>{value}</v>";

    /// <summary>Failed formula.</summary>
    public static string Error(string error) => $"t=\"e\"><f>1/0</f><v>{error}</v>";

    public static byte[] Make(string[][] rows, bool dates1904 = false, string sheet = "Sheet1", string merges = "")
    {
        var cells = new StringBuilder();
        for (int r = 0; r < rows.Length; r++)
        {
            cells.Append($"<row r=\"{r + 1}\">");
            for (int c = 0; c < rows[r].Length; c++)
            {
                if (rows[r][c].Length > 0)
                {
                    cells.Append($"<c r=\"{(char)('A' + c)}{r + 1}\" ").Append(rows[r][c]).Append("</c>");
                }
            }

            cells.Append("</row>");
        }

        using var stream = new MemoryStream();
        using (var zip = new ZipArchive(stream, ZipArchiveMode.Create, leaveOpen: true))
        {
            Add(zip, "[Content_Types].xml", "<Types xmlns=\"http://schemas.openxmlformats.org/package/2006/content-types\"><Default Extension=\"rels\" ContentType=\"application/vnd.openxmlformats-package.relationships+xml\"/><Default Extension=\"xml\" ContentType=\"application/xml\"/><Override PartName=\"/xl/workbook.xml\" ContentType=\"application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml\"/><Override PartName=\"/xl/worksheets/sheet1.xml\" ContentType=\"application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml\"/><Override PartName=\"/xl/styles.xml\" ContentType=\"application/vnd.openxmlformats-officedocument.spreadsheetml.styles+xml\"/></Types>");
            Add(zip, "_rels/.rels", $"<Relationships xmlns=\"http://schemas.openxmlformats.org/package/2006/relationships\"><Relationship Id=\"rId1\" Type=\"{Relations}/officeDocument\" Target=\"xl/workbook.xml\"/></Relationships>");
            Add(zip, "xl/workbook.xml", $"<workbook xmlns=\"{Main}\" xmlns:r=\"{Relations}\"><workbookPr{(dates1904 ? " date1904=\"1\"" : "")}/><sheets><sheet name=\"{sheet}\" sheetId=\"1\" r:id=\"rId1\"/></sheets></workbook>");
            Add(zip, "xl/_rels/workbook.xml.rels", $"<Relationships xmlns=\"http://schemas.openxmlformats.org/package/2006/relationships\"><Relationship Id=\"rId1\" Type=\"{Relations}/worksheet\" Target=\"worksheets/sheet1.xml\"/><Relationship Id=\"rId2\" Type=\"{Relations}/styles\" Target=\"styles.xml\"/></Relationships>");
            Add(zip, "xl/styles.xml", $"<styleSheet xmlns=\"{Main}\"><fonts count=\"1\"><font/></fonts><fills count=\"1\"><fill/></fills><borders count=\"1\"><border/></borders><cellStyleXfs count=\"1\"><xf/></cellStyleXfs><cellXfs count=\"3\"><xf numFmtId=\"0\"/><xf numFmtId=\"14\" applyNumberFormat=\"1\"/><xf numFmtId=\"11\" applyNumberFormat=\"1\"/></cellXfs></styleSheet>");
            Add(zip, "xl/worksheets/sheet1.xml", $"<worksheet xmlns=\"{Main}\"><sheetData>{cells}</sheetData>{merges}</worksheet>");
        }

        return stream.ToArray();
    }

    private static void Add(ZipArchive zip, string name, string xml)
    {
        using var writer = new StreamWriter(zip.CreateEntry(name).Open());
        writer.Write("<?xml version=\"1.0\" encoding=\"UTF-8\" standalone=\"yes\"?>");
        writer.Write(xml);
    }
}
