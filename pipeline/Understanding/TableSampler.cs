using PartsSignal.Pipeline.Cleaning;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Reading;

namespace PartsSignal.Pipeline.Understanding;

/// <summary>Reads what is needed of a table: its header, some of its rows, and the different values of its columns.</summary>
internal static class TableSampler
{
    private const int ProfiledRows = 5_000;
    private const int MostRows = 800;
    private const int MostColumns = 300;
    private const double DayHeader = 0.5;

    /// <summary>Reads every table of a file: the one of a text file, or each sheet that is shown.</summary>
    public static IEnumerable<SampledTable> Read(InputFile file, ReadingLimits limits, CancellationToken cancellation)
    {
        var scan = ContentScan.Read(file, limits, cancellation);
        if (!file.IsWorkbook)
        {
            yield return Read(file, scan, null, limits, null, cancellation);
            yield break;
        }

        Workbook workbook = Workbooks.Read(file, scan, limits);
        foreach (string sheet in workbook.Sheets())
        {
            yield return Read(file, scan, sheet, limits, workbook, cancellation);
        }
    }

    private static SampledTable Read(InputFile file, ContentScan scan, string? sheet, ReadingLimits limits, Workbook? workbook, CancellationToken cancellation)
    {
        try
        {
            using OpenedTable table = OpenedTable.Open(file, scan, new SourceMap { Files = file.Name, Kind = "jobs", Sheet = sheet }, limits, workbook);
            int headerLine = table.Header.All(string.IsNullOrWhiteSpace) ? 0 : table.Reader.Line;
            return Read(file, sheet, table, cancellation) with { HeaderLine = headerLine, Form = FormOf(file, scan, table) };
        }
        catch (FileRefusedException) when (sheet is null)
        {
            throw;
        }
        catch (BadInputException bad)
        {
            return new SampledTable(new TableSample(file.Name, sheet, 0, []), 0, []) { Refusal = bad.Message };
        }
    }

    private static SampledTable Read(InputFile file, string? sheet, OpenedTable table, CancellationToken cancellation)
    {
        var names = new ColumnNames(table.Header);
        int width = Math.Min(names.All.Count, MostColumns);
        bool[] namesADay = [.. names.All.Take(width).Select(NamesADay)];
        if (table.Reader is WorkbookTable workbook)
        {
            workbook.ReadDays([.. Enumerable.Range(0, width).Where(i => namesADay[i])]);
        }

        ValueSet[] values = [.. Enumerable.Range(0, width).Select(_ => new ValueSet())];
        ColumnProfile[] profiles = [.. names.All.Take(width).Select((n, i) => new ColumnProfile(n, i))];
        var rows = new RowSample(MostRows);
        var first = new List<string[]>();
        long all = 0, bad = 0;
        while (table.Reader.Read())
        {
            RowCells row = table.Reader.Row;
            if (table.Reader.Fault is null && row.IsBlank)
            {
                continue;
            }

            cancellation.ThrowIfCancellationRequested();
            all++;
            if (table.Reader.Fault is not null || row.Count < names.All.Count || row.FilledCount() > names.All.Count)
            {
                bad++;
                continue;
            }

            for (int i = 0; all <= ProfiledRows && i < profiles.Length; i++)
            {
                profiles[i].Add(row[i], row.Form(i));
            }

            for (int i = 0; i < width; i++)
            {
                if (!EmptyMark.Is(row[i]))
                {
                    values[i].Add(row[i]);
                }
            }

            if (first.Count < TablePreview.Rows)
            {
                first.Add([.. Enumerable.Range(0, width).Select(i => row[i].Trim().ToString())]);
            }

            if (rows.WantsNext)
            {
                rows.Keep([.. Enumerable.Range(0, width).Select(i => EmptyMark.Is(row[i]) ? "" : namesADay[i] ? AsDay(row[i]) : row[i].Trim().ToString())]);
            }
            else
            {
                rows.Skip();
            }
        }

        ColumnSample[] columns = [.. Enumerable.Range(0, width).Select(i => new ColumnSample(names.All[i], i, [.. rows.Rows.Select(r => r[i])]) { Values = values[i] })];
        return new SampledTable(new TableSample(file.Name, sheet, all, RepeatedColumns.Collapse(columns)), bad, columns) { Profiles = profiles, FirstRows = first };
    }

    // Plain numbers count days where the header speaks of a day before anything else.
    private static bool NamesADay(string header)
    {
        double[] match = HeaderLexicon.Shipped.Match(header);
        int best = Array.IndexOf(match, match.Max());
        return match[best] >= DayHeader && HeaderLexicon.Shipped.Fields[best].EndsWith("_on", StringComparison.Ordinal);
    }

    private static string AsDay(ReadOnlySpan<char> cell) =>
        SpreadsheetDay.TryRead(cell, out DateTime time) ? WorkbookDates.Text(time) : cell.Trim().ToString();

    private static string FormOf(InputFile file, ContentScan scan, OpenedTable table) => table.Reader switch
    {
        WorkbookTable sheet => $"workbook, sheet '{sheet.Sheet}'",
        _ => $"text, {TextEncodings.Detect(scan).WebName}, {NameOf(table.Separator)}{(file.InnerName == file.Name ? "" : ", gzip")}",
    };

    private static string NameOf(char separator) => separator switch
    {
        ',' => "comma",
        ';' => "semicolon",
        '\t' => "tab",
        _ => "pipe",
    };
}
