using System.Globalization;
using System.IO.Compression;
using System.Security;
using System.Text;

namespace PartsSignal.SampleShop.Dialects;

/// <summary>Writes tables as the sheets of a workbook, its parts stored unpacked and undated so that the same tables give the same bytes.</summary>
internal sealed class WorkbookWriter(Dialect dialect, CellWriter cells)
{
    /// <summary>Days from the workbook's day zero to .NET's.</summary>
    private const int DayZero = 693593;

    private const string Main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
    private const string Relations = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
    private const string Package = "http://schemas.openxmlformats.org/package/2006";
    private const string Sheets = "application/vnd.openxmlformats-officedocument.spreadsheetml";

    /// <param name="cover">Lines of a first sheet that holds no table; empty for no such sheet.</param>
    /// <param name="titles">Lines above the header of each table, in the order of the tables.</param>
    public void Write(string path, IReadOnlyList<string> cover, IReadOnlyList<TableDraft> tables, IReadOnlyList<IReadOnlyList<string>> titles)
    {
        var sheets = new List<(string Name, string Rows)>();
        if (cover.Count > 0)
        {
            sheets.Add(("Cover", string.Concat(cover.Select((text, i) => Row(i + 1, [Inline(0, i + 1, text)])))));
        }

        for (int i = 0; i < tables.Count; i++)
        {
            sheets.Add((tables[i].Name, Table(tables[i], titles[i])));
        }

        using var file = new FileStream(path, FileMode.Create);
        using var zip = new ZipArchive(file, ZipArchiveMode.Create);
        string[] numbers = [.. Enumerable.Range(1, sheets.Count).Select(n => n.ToString(CultureInfo.InvariantCulture))];
        Entry(zip, "[Content_Types].xml", $"<Types xmlns=\"{Package}/content-types\"><Default Extension=\"rels\" ContentType=\"application/vnd.openxmlformats-package.relationships+xml\"/><Default Extension=\"xml\" ContentType=\"application/xml\"/><Override PartName=\"/xl/workbook.xml\" ContentType=\"{Sheets}.sheet.main+xml\"/><Override PartName=\"/xl/styles.xml\" ContentType=\"{Sheets}.styles+xml\"/>{string.Concat(numbers.Select(n => $"<Override PartName=\"/xl/worksheets/sheet{n}.xml\" ContentType=\"{Sheets}.worksheet+xml\"/>"))}</Types>");
        Entry(zip, "_rels/.rels", $"<Relationships xmlns=\"{Package}/relationships\"><Relationship Id=\"rId1\" Type=\"{Relations}/officeDocument\" Target=\"xl/workbook.xml\"/></Relationships>");
        Entry(zip, "xl/workbook.xml", $"<workbook xmlns=\"{Main}\" xmlns:r=\"{Relations}\"><sheets>{string.Concat(sheets.Select((s, i) => $"<sheet name=\"{Escape(s.Name)}\" sheetId=\"{numbers[i]}\" r:id=\"rId{numbers[i]}\"/>"))}</sheets></workbook>");
        Entry(zip, "xl/_rels/workbook.xml.rels", $"<Relationships xmlns=\"{Package}/relationships\">{string.Concat(numbers.Select(n => $"<Relationship Id=\"rId{n}\" Type=\"{Relations}/worksheet\" Target=\"worksheets/sheet{n}.xml\"/>"))}<Relationship Id=\"rIdStyles\" Type=\"{Relations}/styles\" Target=\"styles.xml\"/></Relationships>");
        Entry(zip, "xl/styles.xml", $"<styleSheet xmlns=\"{Main}\"><fonts count=\"1\"><font/></fonts><fills count=\"1\"><fill/></fills><borders count=\"1\"><border/></borders><cellStyleXfs count=\"1\"><xf/></cellStyleXfs><cellXfs count=\"3\"><xf numFmtId=\"0\"/><xf numFmtId=\"14\" applyNumberFormat=\"1\"/><xf numFmtId=\"22\" applyNumberFormat=\"1\"/></cellXfs></styleSheet>");
        for (int i = 0; i < sheets.Count; i++)
        {
            Entry(zip, $"xl/worksheets/sheet{numbers[i]}.xml", $"<worksheet xmlns=\"{Main}\"><sheetData>{sheets[i].Rows}</sheetData></worksheet>");
        }
    }

    private static void Entry(ZipArchive zip, string name, string xml)
    {
        ZipArchiveEntry entry = zip.CreateEntry(name, CompressionLevel.NoCompression);
        entry.LastWriteTime = new DateTimeOffset(2020, 1, 1, 0, 0, 0, TimeSpan.Zero);
        using var writer = new StreamWriter(entry.Open(), new UTF8Encoding(false));
        writer.Write("<?xml version=\"1.0\" encoding=\"UTF-8\" standalone=\"yes\"?>\n");
        writer.Write(xml);
    }

    private static string Escape(string text) => SecurityElement.Escape(text);

    private static string Row(int number, IEnumerable<string> texts) => $"<row r=\"{number.ToString(CultureInfo.InvariantCulture)}\">{string.Concat(texts)}</row>";

    private static string Place(int column, int row) =>
        (column >= 26 ? ((char)('A' + (column / 26) - 1)).ToString() : "") + (char)('A' + (column % 26)) + row.ToString(CultureInfo.InvariantCulture);

    private static string Inline(int column, int row, string text) =>
        text.Length == 0 ? "" : $"<c r=\"{Place(column, row)}\" t=\"inlineStr\"><is><t xml:space=\"preserve\">{Escape(text)}</t></is></c>";

    private static string Number(int column, int row, double number, int style) =>
        $"<c r=\"{Place(column, row)}\"{(style > 0 ? $" s=\"{style.ToString(CultureInfo.InvariantCulture)}\"" : "")}><v>{number.ToString("R", CultureInfo.InvariantCulture)}</v></c>";

    private string Table(TableDraft table, IReadOnlyList<string> title)
    {
        var text = new StringBuilder();
        int at = 1;
        foreach (string line in title)
        {
            text.Append(Row(at, [Inline(0, at, line)]));
            at++;
        }

        if (title.Count > 0 && dialect.BlankAfterTitle)
        {
            at++;
        }

        text.Append(Row(at, table.Columns.Select((c, i) => Inline(i, at, c.Header))));
        for (int row = 0; row < table.Rows; row++)
        {
            if (table.Banners.TryGetValue(row, out string? banner))
            {
                int above = at + 1;
                at += 2;
                text.Append(Row(above, [Inline(0, above, banner)])).Append(Row(at, table.Columns.Select((c, i) => Inline(i, at, c.Header))));
            }

            at++;
            text.Append(Row(at, table.Columns.Select((c, i) => Value(i, at, c.Cells[row]))));
        }

        if (dialect.Footer != Footer.None && table.Columns.Count > 2)
        {
            int line = at + 1;
            text.Append(Row(line, [Inline(0, line, "Total"), Number(1, line, table.Rows, 0)]));
        }

        return text.ToString();
    }

    private string Value(int column, int row, Cell cell) => cell.Form switch
    {
        CellForm.Day when dialect.Dates != WorkbookDates.Text => Number(column, row, cell.Number - DayZero, dialect.Dates == WorkbookDates.Styled ? 1 : 0),
        CellForm.Stamp when dialect.Dates != WorkbookDates.Text => Number(column, row, Math.Round((cell.Number / 1440) - DayZero, 6), dialect.Dates == WorkbookDates.Styled ? 2 : 0),
        CellForm.Whole or CellForm.Decimal or CellForm.Money => Number(column, row, cell.Number, 0),
        _ => Inline(column, row, cells.Write(cell)),
    };
}
