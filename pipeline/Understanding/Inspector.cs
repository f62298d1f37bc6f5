using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Understanding;

/// <summary>Looks at a file and proposes how to read it.</summary>
internal sealed class Inspector(ReadingLimits limits, WordSets words)
{
    private const int ProfiledRows = 20_000;
    private static readonly string[] Amounts = ["price", "unit_cost", "age_years"];

    /// <summary>Inspects one file.</summary>
    /// <param name="file">The file.</param>
    /// <param name="cancellation">Stops.</param>
    public Inspection Inspect(InputFile file, CancellationToken cancellation)
    {
        var scan = ContentScan.Read(file, limits, cancellation);

        var open = new SourceMap { Files = file.Name, Kind = "jobs" };
        using OpenedTable table = OpenedTable.Open(file, scan, open, limits);
        int headerLine = table.Header.All(string.IsNullOrWhiteSpace) ? 0 : table.Reader.Line;
        var names = new ColumnNames(table.Header);
        ColumnProfile[] columns = [.. names.All.Select((n, i) => new ColumnProfile(n, i))];
        (long rows, long bad) = Read(table, columns, cancellation);
        SourceMap? map = Propose(file.Name, names.All, columns);
        return new Inspection(
            file.Name,
            FormOf(file, scan, table),
            headerLine,
            rows,
            bad,
            map,
            Explain(map, columns),
            map is null ? [NoKind(names.All)] : [.. InspectionQuestions.Find(map, columns, words)],
            map is null ? [] : [.. InspectionQuestions.Notes(map, columns)]);
    }

    private static (long Rows, long Bad) Read(OpenedTable table, ColumnProfile[] columns, CancellationToken cancellation)
    {
        long rows = 0, bad = 0;
        while (table.Reader.Read())
        {
            if (table.Reader.Fault is null && table.Reader.Row.IsBlank)
            {
                continue;
            }

            rows++;
            bool whole = table.Reader.Fault is null && table.Reader.Row.Count >= columns.Length && table.Reader.Row.FilledCount() <= columns.Length;
            bad += whole ? 0 : 1;
            if (!whole || rows > ProfiledRows)
            {
                continue;
            }

            cancellation.ThrowIfCancellationRequested();
            foreach (ColumnProfile column in columns)
            {
                column.Add(table.Reader.Row[column.Index], table.Reader.Row.Form(column.Index));
            }
        }

        return (rows, bad);
    }

    private static SourceMap? Propose(string files, IReadOnlyList<string> names, ColumnProfile[] columns)
    {
        if (RepairDataStandard.Map(files, names) is { } standard)
        {
            return standard;
        }

        IReadOnlyList<IReadOnlyDictionary<string, string>> groups = PartGroupFinder.Find(names);
        HashSet<string> grouped = [.. groups.SelectMany(g => g.Values)];
        if (KindChooser.Choose([.. columns.Where(c => !grouped.Contains(c.Name))], groups.Count > 0) is not { } choice)
        {
            return null;
        }

        ColumnProfile[] dates = [.. choice.Fields.Where(f => f.Key.EndsWith("_on", StringComparison.Ordinal)).Select(f => f.Value)];
        HashSet<string> prices = [.. groups.Select(g => g.GetValueOrDefault("price")).OfType<string>(), .. Amounts.Where(choice.Fields.ContainsKey).Select(f => choice.Fields[f].Name)];
        ColumnProfile[] amounts = [.. columns.Where(c => prices.Contains(c.Name))];
        return new SourceMap
        {
            Files = files,
            Kind = choice.Kind,
            DateOrder = OrderOf(dates),
            NumberStyle = StyleOf(amounts),
            Columns = choice.Fields.OrderBy(f => f.Value.Index).ToDictionary(f => f.Key, f => (IReadOnlyList<string>)[f.Value.Name], StringComparer.Ordinal),
            PartGroups = groups,
        };
    }

    private static string? OrderOf(ColumnProfile[] dates)
    {
        int day = dates.Sum(d => d.Dates.DayFirst);
        int month = dates.Sum(d => d.Dates.MonthFirst);
        return day == 0 && month == 0 ? null : day >= month ? "dmy" : "mdy";
    }

    private static string? StyleOf(ColumnProfile[] amounts)
    {
        int point = amounts.Sum(a => a.Numbers.Point);
        int comma = amounts.Sum(a => a.Numbers.Comma);
        return point == 0 && comma == 0 ? null : comma > point ? "comma" : "point";
    }

    private static IReadOnlyList<ProposedColumn> Explain(SourceMap? map, ColumnProfile[] columns) =>
        [.. columns.Select(c => new ProposedColumn(c.Name, FieldOf(map, c.Name), ReasonOf(map, c)))];

    private static string? FieldOf(SourceMap? map, string column)
    {
        string? field = map?.Columns.Where(f => f.Value.Contains(column)).Select(f => f.Key).FirstOrDefault();
        int group = map?.PartGroups.ToList().FindIndex(g => g.Values.Contains(column)) ?? -1;
        return field ?? (group < 0 ? null : $"{map!.PartGroups[group].First(f => f.Value == column).Key} of part {group + 1}");
    }

    private static string ReasonOf(SourceMap? map, ColumnProfile column)
    {
        string cells = ContentFit.Describe(column);
        string? field = FieldOf(map, column.Name);
        bool named = field is not null && HeaderField.All.Any(h => h.Kind == map!.Kind && field.StartsWith(h.Field, StringComparison.Ordinal) && h.Match(column.Name) >= 0.4);
        return field is null ? cells : named ? "header; " + cells : cells;
    }

    private static string NoKind(IReadOnlyList<string> names) =>
        $"The columns fit no kind of file. A job log needs at least the day of the call and the complaint. The header reads: {string.Join(", ", names.Take(20))}. Write the map by hand in shop.json.";

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
