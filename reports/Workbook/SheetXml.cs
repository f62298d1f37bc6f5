using System.Globalization;
using System.Xml;
using PartsSignal.Reports.Components;

namespace PartsSignal.Reports.Workbook;

/// <summary>Writes one sheet: a heading row that stays in view, then the rows.</summary>
internal static class SheetXml
{
    private const string Main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
    private static readonly DateOnly DayZero = new(1899, 12, 30);

    public static void Write(XmlWriter writer, WorkbookSheet sheet)
    {
        writer.WriteStartElement("worksheet", Main);
        writer.WriteRaw("<sheetViews><sheetView workbookViewId=\"0\"><pane ySplit=\"1\" topLeftCell=\"A2\" activePane=\"bottomLeft\" state=\"frozen\"/></sheetView></sheetViews>");
        Widths(writer, sheet);
        writer.WriteStartElement("sheetData", Main);
        writer.WriteStartElement("row", Main);
        foreach (string head in sheet.Heads)
        {
            Text(writer, head, CellStyles.Head);
        }

        writer.WriteEndElement();
        foreach (IReadOnlyList<WorkbookCell> row in sheet.Rows)
        {
            writer.WriteStartElement("row", Main);
            for (int i = 0; i < row.Count; i++)
            {
                Cell(writer, row[i], FormStyle(sheet, i));
            }

            writer.WriteEndElement();
        }

        writer.WriteEndElement();
        DropDown(writer, sheet);
        writer.WriteEndElement();
    }

    private static int? FormStyle(WorkbookSheet sheet, int column) => sheet.Form is not { } form ? null : column == form.AnswerColumn ? CellStyles.FormAnswer : CellStyles.FormText;

    // Offers the choices and takes any other text.
    private static void DropDown(XmlWriter writer, WorkbookSheet sheet)
    {
        if (sheet.Form is not { Choices: { } choices } form || sheet.Rows.Count == 0)
        {
            return;
        }

        string column = Letters(form.AnswerColumn);
        writer.WriteStartElement("dataValidations", Main);
        writer.WriteAttributeString("count", "1");
        writer.WriteStartElement("dataValidation", Main);
        writer.WriteAttributeString("type", "list");
        writer.WriteAttributeString("allowBlank", "1");
        writer.WriteAttributeString("sqref", $"{column}2:{column}{XmlConvert.ToString(sheet.Rows.Count + 1)}");
        writer.WriteElementString("formula1", Main, choices);
        writer.WriteEndElement();
        writer.WriteEndElement();
    }

    private static string Letters(int column)
    {
        string letters = "";
        for (int n = column + 1; n > 0; n = (n - 1) / 26)
        {
            letters = (char)('A' + ((n - 1) % 26)) + letters;
        }

        return letters;
    }

    private static void Widths(XmlWriter writer, WorkbookSheet sheet)
    {
        writer.WriteStartElement("cols", Main);
        for (int i = 0; i < sheet.Heads.Count; i++)
        {
            int longest = sheet.Rows.Select(r => r[i].Value is string text ? text.Length : 10).Append(sheet.Heads[i].Length).Max();
            writer.WriteStartElement("col", Main);
            writer.WriteAttributeString("min", XmlConvert.ToString(i + 1));
            writer.WriteAttributeString("max", XmlConvert.ToString(i + 1));
            writer.WriteAttributeString("width", XmlConvert.ToString(Math.Clamp(longest + 2, 8, 60)));
            writer.WriteAttributeString("customWidth", "1");
            if (FormStyle(sheet, i) is { } style)
            {
                // Cells below the last row are text as well.
                writer.WriteAttributeString("style", XmlConvert.ToString(style));
            }

            writer.WriteEndElement();
        }

        writer.WriteEndElement();
    }

    private static void Cell(XmlWriter writer, WorkbookCell cell, int? style)
    {
        switch (cell.Value)
        {
            case null or "" when style is { } empty: Empty(writer, empty); break;
            case null: writer.WriteElementString("c", Main, null); break;
            case string text when style is { } own: Text(writer, text, own); break;
            case string text: Text(writer, text, text.Length > 0 && "=+-@\t\r\n".Contains(text[0], StringComparison.Ordinal) ? CellStyles.FormulaLike : 0); break;
            case DateOnly day: Number(writer, day.DayNumber - DayZero.DayNumber, CellStyles.Index(CellKind.Day)); break;
            case IFormattable number: Number(writer, number, CellStyles.Index(cell.Kind)); break;
            default: throw new ArgumentException($"A cell of type {cell.Value.GetType().Name} cannot be written.", nameof(cell));
        }
    }

    private static void Empty(XmlWriter writer, int style)
    {
        writer.WriteStartElement("c", Main);
        writer.WriteAttributeString("s", XmlConvert.ToString(style));
        writer.WriteEndElement();
    }

    private static void Number(XmlWriter writer, IFormattable value, int style)
    {
        writer.WriteStartElement("c", Main);
        writer.WriteAttributeString("s", XmlConvert.ToString(style));
        writer.WriteElementString("v", Main, value.ToString(null, CultureInfo.InvariantCulture));
        writer.WriteEndElement();
    }

    private static void Text(XmlWriter writer, string text, int style)
    {
        writer.WriteStartElement("c", Main);
        writer.WriteAttributeString("s", XmlConvert.ToString(style));
        writer.WriteAttributeString("t", "inlineStr");
        writer.WriteStartElement("is", Main);
        writer.WriteStartElement("t", Main);
        writer.WriteAttributeString("xml", "space", null, "preserve");
        writer.WriteString(Legal(text));
        writer.WriteEndElement();
        writer.WriteEndElement();
        writer.WriteEndElement();
    }

    // XML cannot hold most control characters or half a surrogate pair, not even escaped.
    private static string Legal(string text)
    {
        char[] legal = text.ToCharArray();
        for (int i = 0; i < legal.Length; i++)
        {
            if (i + 1 < legal.Length && char.IsSurrogatePair(legal[i], legal[i + 1]))
            {
                i++;
            }
            else if (!XmlConvert.IsXmlChar(legal[i]))
            {
                legal[i] = '\uFFFD';
            }
        }

        return new string(legal);
    }
}
