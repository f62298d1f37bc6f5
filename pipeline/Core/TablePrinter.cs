using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace PartsSignal.Pipeline.Core;

/// <summary>Output format of a command's tables.</summary>
internal enum OutputFormat
{
    /// <summary>Plain text, at most 80 columns wide.</summary>
    Table,

    /// <summary>Comma-separated, for spreadsheets.</summary>
    Csv,

    /// <summary>JSON, for programs.</summary>
    Json,
}

/// <summary>One column of a printed table.</summary>
/// <param name="Key">Name in CSV and JSON, snake case.</param>
/// <param name="Head">Heading in plain text.</param>
/// <param name="Value">The cell: a string, number, DateOnly, bool or null.</param>
/// <param name="Format">Format in plain text, for example 0.0 %, or null for the default.</param>
internal sealed record TableColumn<T>(string Key, string Head, Func<T, object?> Value, string? Format = null);

/// <summary>Prints records as a plain table, CSV or JSON.</summary>
internal static class TablePrinter
{
    private static readonly JsonSerializerOptions Indented = new(JsonSerializerOptions.Default) { WriteIndented = true };

    /// <summary>Writes all rows.</summary>
    public static void Print<T>(TextWriter writer, OutputFormat format, IReadOnlyList<T> rows, IReadOnlyList<TableColumn<T>> columns)
    {
        switch (format)
        {
            case OutputFormat.Csv: Csv(writer, rows, columns); break;
            case OutputFormat.Json: writer.WriteLine(ToJson(rows, columns).ToJsonString(Indented)); break;
            default: Plain(writer, rows, columns); break;
        }
    }

    /// <summary>The rows as JSON objects.</summary>
    public static JsonArray ToJson<T>(IReadOnlyList<T> rows, IReadOnlyList<TableColumn<T>> columns)
    {
        var array = new JsonArray();
        foreach (T row in rows)
        {
            var item = new JsonObject();
            foreach (TableColumn<T> column in columns)
            {
                object? value = column.Value(row);
                item[column.Key] = value is DateOnly day ? day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) : JsonValue.Create(value);
            }

            array.Add(item);
        }

        return array;
    }

    /// <summary>A CSV cell, quoted where needed. Text that a spreadsheet would run as a formula gets a leading apostrophe.</summary>
    public static string CsvCell(object? value)
    {
        string text = Invariant(value);
        if (value is string && text.Length > 0 && "=+-@\t\r\n".Contains(text[0], StringComparison.Ordinal))
        {
            text = "'" + text;
        }

        return text.AsSpan().IndexOfAny(",\"\r\n") >= 0 ? "\"" + text.Replace("\"", "\"\"", StringComparison.Ordinal) + "\"" : text;
    }

    private static void Csv<T>(TextWriter writer, IReadOnlyList<T> rows, IReadOnlyList<TableColumn<T>> columns)
    {
        writer.WriteLine(string.Join(',', columns.Select(c => CsvCell(c.Key))));
        foreach (T row in rows)
        {
            writer.WriteLine(string.Join(',', columns.Select(c => CsvCell(c.Value(row)))));
        }
    }

    private static void Plain<T>(TextWriter writer, IReadOnlyList<T> rows, IReadOnlyList<TableColumn<T>> columns)
    {
        string[][] cells = [.. rows.Select(r => columns.Select(c => Shown(c.Value(r), c.Format)).ToArray())];
        int[] widths = [.. columns.Select((c, i) => Math.Max(c.Head.Length, cells.Select(row => row[i].Length).DefaultIfEmpty(0).Max()))];
        bool[] right = [.. columns.Select((c, i) => rows.Count > 0 && rows.Any(r => c.Value(r) is not null) && rows.All(r => c.Value(r) is null or int or long or double or decimal))];
        Line(writer, columns.Select(c => c.Head).ToArray(), widths, right);
        writer.WriteLine(string.Join("  ", widths.Select(w => new string('-', w))));
        foreach (string[] row in cells)
        {
            Line(writer, row, widths, right);
        }
    }

    private static void Line(TextWriter writer, string[] cells, int[] widths, bool[] right)
    {
        var line = new StringBuilder();
        for (int i = 0; i < cells.Length; i++)
        {
            line.Append(i == 0 ? "" : "  ").Append(right[i] ? cells[i].PadLeft(widths[i]) : cells[i].PadRight(widths[i]));
        }

        writer.WriteLine(line.ToString().TrimEnd());
    }

    private static string Shown(object? value, string? format) =>
        value is null ? "-" : format is not null && value is IFormattable f ? f.ToString(format, CultureInfo.InvariantCulture) : Invariant(value);

    private static string Invariant(object? value) => value switch
    {
        null => "",
        DateOnly day => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
        bool flag => flag ? "yes" : "no",
        IFormattable f => f.ToString(null, CultureInfo.InvariantCulture),
        _ => value.ToString() ?? "",
    };
}
