using System.Xml;
using PartsSignal.Reports.Components;

namespace PartsSignal.Reports.Workbook;

/// <summary>The cell formats in use, by their index in the style sheet.</summary>
internal static class CellStyles
{
    public const int Head = 1;
    public const int FormulaLike = 2;
    private const string Main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";

    private static readonly (CellKind Kind, string Format)[] Formats =
        [(CellKind.Count, "#,##0"), (CellKind.Share, "0.0%"), (CellKind.Number, "0.###"), (CellKind.Money, "#,##0.00"), (CellKind.Day, "yyyy-mm-dd"), (CellKind.Days, "0.#")];

    public static int Index(CellKind kind) => kind is CellKind.Text or CellKind.Code ? 0 : FormulaLike + 1 + Array.FindIndex(Formats, f => f.Kind == kind);

    /// <summary>Text that stays text when somebody types over it.</summary>
    public static int FormText => Formats.Length + 3;

    /// <summary>The same, tinted: a cell to fill in.</summary>
    public static int FormAnswer => FormText + 1;

    /// <summary>Writes the style sheet.</summary>
    /// <param name="writer">Receives it.</param>
    /// <param name="forms">True when a sheet is a form.</param>
    public static void Write(XmlWriter writer, bool forms)
    {
        writer.WriteStartElement("styleSheet", Main);
        List(writer, "numFmts", Formats.Length, i => Element(writer, "numFmt", ("numFmtId", XmlConvert.ToString(164 + i)), ("formatCode", Formats[i].Format)));
        writer.WriteRaw("<fonts count=\"2\"><font><sz val=\"11\"/></font><font><b/><sz val=\"11\"/></font></fonts>");
        const string Plain = "<fill><patternFill patternType=\"none\"/></fill><fill><patternFill patternType=\"gray125\"/></fill>";
        const string Tint = "<fill><patternFill patternType=\"solid\"><fgColor rgb=\"FFFFF6D6\"/></patternFill></fill>";
        writer.WriteRaw(forms ? $"<fills count=\"3\">{Plain}{Tint}</fills>" : $"<fills count=\"2\">{Plain}</fills>");
        writer.WriteRaw("<borders count=\"1\"><border/></borders><cellStyleXfs count=\"1\"><xf/></cellStyleXfs>");
        List(writer, "cellXfs", forms ? FormAnswer + 1 : FormText, Cell);
        writer.WriteEndElement();

        // Number format 49 is text.
        void Form(bool tinted)
        {
            writer.WriteStartElement("xf", Main);
            writer.WriteAttributeString("numFmtId", "49");
            writer.WriteAttributeString("applyNumberFormat", "1");
            writer.WriteAttributeString("fillId", tinted ? "2" : "0");
            writer.WriteAttributeString("applyFill", "1");
            writer.WriteAttributeString("applyAlignment", "1");
            Element(writer, "alignment", ("vertical", "top"), ("wrapText", "1"));
            writer.WriteEndElement();
        }

        void Cell(int i)
        {
            switch (i)
            {
                case 0: Element(writer, "xf"); break;
                case Head: Element(writer, "xf", ("fontId", "1"), ("applyFont", "1")); break;
                case FormulaLike: Element(writer, "xf", ("quotePrefix", "1")); break;
                case var n when n >= FormText: Form(tinted: n == FormAnswer); break;
                default: Element(writer, "xf", ("numFmtId", XmlConvert.ToString(164 + i - 3)), ("applyNumberFormat", "1")); break;
            }
        }
    }

    private static void List(XmlWriter writer, string name, int count, Action<int> item)
    {
        writer.WriteStartElement(name, Main);
        writer.WriteAttributeString("count", XmlConvert.ToString(count));
        for (int i = 0; i < count; i++)
        {
            item(i);
        }

        writer.WriteEndElement();
    }

    private static void Element(XmlWriter writer, string name, params ReadOnlySpan<(string Name, string Value)> attributes)
    {
        writer.WriteStartElement(name, Main);
        foreach ((string key, string value) in attributes)
        {
            writer.WriteAttributeString(key, value);
        }

        writer.WriteEndElement();
    }
}
