using System.Text;
using PartsSignal.Pipeline.Core;

namespace PartsSignal.Pipeline.Reading;

/// <summary>A table whose header was read; its next row is the first of the data.</summary>
/// <param name="Reader">The rows.</param>
/// <param name="Header">Cells of the header; empty names where the table has none.</param>
/// <param name="Separator">Between cells of a text table; a comma for workbooks.</param>
internal sealed record OpenedTable(TableReader Reader, IReadOnlyList<string> Header, char Separator) : IDisposable
{
    private const int SampleRows = 300;

    /// <summary>Lines above the header that are not blank, as the file has them; a sheet's cells with tabs between.</summary>
    public IReadOnlyList<(int Line, string Text)> Titles { get; init; } = [];

    /// <summary>Opens a file as its map says, and decides the rest.</summary>
    /// <param name="file">The file.</param>
    /// <param name="scan">What its content was when it was scanned.</param>
    /// <param name="map">Its map.</param>
    /// <param name="limits">Limits of reading.</param>
    /// <param name="workbook">The workbook where it was read before, or null to read it now.</param>
    /// <exception cref="BadInputException">The file has no rows, no such sheet, or cannot be read at all.</exception>
    public static OpenedTable Open(InputFile file, ContentScan scan, SourceMap map, ReadingLimits limits, Workbook? workbook = null)
    {
        string[] wanted = [.. map.Columns.Values.SelectMany(c => c).Concat(map.PartGroups.SelectMany(g => g.Values)).Where(h => !h.StartsWith('#'))];
        OpenedTable opened = file.IsWorkbook ? OpenSheet(file.Name, workbook ?? Workbooks.Read(file, scan, limits), map, wanted) : OpenText(file, scan, map, wanted, limits);
        if (opened.Header.Count > limits.MaxColumns)
        {
            opened.Dispose();
            throw TooManyColumns(file.Name, opened.Header.Count, limits);
        }

        return opened;
    }

    /// <inheritdoc/>
    public void Dispose() => Reader.Dispose();

    private static FileRefusedException TooManyColumns(string file, int columns, ReadingLimits limits) =>
        new(file, FileFaults.TooLarge($"The file has {columns} columns or more; the limit is {limits.MaxColumns}.", "maxColumns"));

    private static OpenedTable OpenText(InputFile file, ContentScan scan, SourceMap map, string[] wanted, ReadingLimits limits)
    {
        Encoding encoding = map.Encoding is null ? TextEncodings.Detect(scan) : TextEncodings.Parse(map.Encoding);
        byte[] start = TextTables.Start(file, scan, encoding, limits);
        if (!start.AsSpan().ContainsAnyExcept(" \t\r\n\0"u8))
        {
            throw new FileRefusedException(file.Name, start.Contains((byte)0) ? FileFaults.Zeros : FileFaults.Empty);
        }

        if (scan.Mark is null && !TextTables.LooksLikeText(file, limits))
        {
            throw new FileRefusedException(file.Name, FileFaults.NotText);
        }

        TextForm form = TextForm.Decide(start, encoding, map.Separator, map.HeaderLine, wanted, limits);
        int firstLine = start.AsSpan().IndexOf((byte)'\n');
        int columns = start.AsSpan(0, firstLine < 0 ? start.Length : firstLine).Count((byte)form.Separator) + 1;
        if (form.HeaderLine == 0 && columns > limits.MaxColumns)
        {
            throw TooManyColumns(file.Name, columns, limits);
        }

        CsvTable table = TextTables.Open(file, scan, form, limits);
        int width = form.Header.Count;
        if (form.HeaderLine > 0)
        {
            table.Read();
        }
        else
        {
            width = HeaderFinder.UsualWidth(TextForm.Sample(start, form.Separator, limits));
        }

        table.Expect(width);
        return new OpenedTable(table, form.HeaderLine > 0 ? form.Header : [.. Enumerable.Repeat("", width)], form.Separator) { Titles = TitlesOf(start, form.HeaderLine) };
    }

    private static (int Line, string Text)[] TitlesOf(byte[] start, int headerLine) => headerLine <= 1 ? []
        : [.. Encoding.UTF8.GetString(start).Split(["\r\n", "\n", "\r"], headerLine, StringSplitOptions.None)
            .Take(headerLine - 1).Select((text, i) => (i + 1, text)).Where(t => !string.IsNullOrWhiteSpace(t.text))];

    private static OpenedTable OpenSheet(string file, Workbook workbook, SourceMap map, string[] wanted)
    {
        int line = map.HeaderLine ?? HeaderLine(file, workbook, map, wanted);
        WorkbookTable table = workbook.Open(map.Sheet);
        string[] header = [];
        var titles = new List<(int Line, string Text)>();
        while (table.Line < line && table.Read())
        {
            if (table.Line < line && !table.Row.IsBlank)
            {
                titles.Add((table.Line, string.Join('\t', table.Row.Texts()[..table.Row.FilledCount()])));
            }

            header = [.. Enumerable.Range(0, table.Row.Count).Select(i => table.Row[i].IsWhiteSpace() ? table.Merged(i) : table.Row[i].ToString())];
        }

        table.ReadDays(DaysIn(map, header));
        int width = Array.FindLastIndex(header, h => !string.IsNullOrWhiteSpace(h)) + 1;
        return new OpenedTable(table, header[..width], ',') { Titles = titles };
    }

    private static int[] DaysIn(SourceMap map, string[] header)
    {
        var names = new ColumnNames(header);
        return [.. map.Columns.Where(c => c.Key.EndsWith("_on", StringComparison.Ordinal)).SelectMany(c => c.Value).Select(names.Find).Where(i => i >= 0)];
    }

    private static int HeaderLine(string file, Workbook workbook, SourceMap map, string[] wanted)
    {
        using WorkbookTable table = workbook.Open(map.Sheet);
        IReadOnlyList<SampleRow> rows = SampleRow.Take(table, SampleRows);
        int at = HeaderFinder.Find(rows, wanted);
        return rows.Count == 0 ? throw new FileRefusedException(file, FileFaults.Empty)
            : at < 0 ? throw new BadInputException($"{file}: sheet '{table.Sheet}' has no header. Name its line as headerLine in shop.json.") : rows[at].Line;
    }
}
