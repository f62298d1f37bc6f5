using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Understanding;

/// <summary>Looks at the files of a shop together, proposes how to read them, and asks what only the shop can say.</summary>
internal sealed class Inspector(ReadingLimits limits, WordSets words, IReadOnlyDictionary<string, string>? answers = null)
{
    private const double CodesKnown = 0.5;
    private readonly ReadingAnswers _answers = new(answers ?? new Dictionary<string, string>(StringComparer.Ordinal));

    /// <summary>Inspects one file by itself; of a workbook its first table.</summary>
    /// <param name="file">The file.</param>
    /// <param name="cancellation">Stops.</param>
    public Inspection Inspect(InputFile file, CancellationToken cancellation)
    {
        ShopInspection shop = Inspect([file], cancellation);
        return shop.Tables.FirstOrDefault(t => t.Map is not null) ?? shop.Tables[0];
    }

    /// <summary>Inspects files that belong together.</summary>
    /// <param name="files">The files.</param>
    /// <param name="cancellation">Stops.</param>
    /// <exception cref="BadInputException">No file can be read at all; all faults together.</exception>
    public ShopInspection Inspect(IReadOnlyList<InputFile> files, CancellationToken cancellation)
    {
        var tables = new List<SampledTable>();
        var faults = new List<string>();
        foreach (InputFile file in files)
        {
            try
            {
                tables.AddRange(TableSampler.Read(file, limits, cancellation));
            }
            catch (FileRefusedException bad)
            {
                faults.AddRange(bad.Faults);
                tables.Add(new SampledTable(new TableSample(file.Name, null, 0, []), 0, []) { Refusal = $"{bad.Fault.Message} {bad.Fault.Suggestion}" });
            }
            catch (BadInputException bad)
            {
                faults.AddRange(bad.Faults);
                tables.Add(new SampledTable(new TableSample(file.Name, null, 0, []), 0, []) { Refusal = bad.Message });
            }
        }

        // One broken file among others is left out, and said; where nothing can be read at all, the reasons are the answer.
        if (tables.TrueForAll(t => t.Refusal is not null) && faults.Count > 0)
        {
            throw new BadInputException(faults);
        }

        // Logs of a standard are read as the standard says.
        SourceMap?[] standard = [.. tables.Select(t => RepairDataStandard.Map(t.Sample.File, [.. t.AllColumns.Select(c => c.Name)]))];
        TableReading[] readings = [.. ShopUnderstanding.Decide(tables, _answers, ReadingModel.Shipped)];
        SourceMap?[] maps = [.. readings.Select((r, i) => (r.IsAnswered ? null : standard[i]) ?? (r.Choice is null ? null : MapMaker.Make(r, r.Table.Profiles, _answers)))];
        var wordQuestions = new List<ReadingQuestion>();
        for (int i = 0; i < maps.Length; i++)
        {
            if (maps[i] is { } map && (standard[i] is null || readings[i].IsAnswered))
            {
                (map, IReadOnlyList<ReadingQuestion> asked) = WordFields.Complete(readings[i], map, _answers, words);
                (maps[i], IReadOnlyList<ReadingQuestion> ages) = AgeFields.Complete(readings[i], map, _answers);
                wordQuestions.AddRange([.. asked, .. ages]);
            }
        }

        var shop = ShopStyles.Of(maps.OfType<SourceMap>());
        for (int i = 0; i < maps.Length; i++)
        {
            maps[i] = maps[i] is { } map ? WithStyles(map, tables[i].Profiles, shop) : null;
        }

        (IReadOnlyList<SourceMap?> linked, IReadOnlyList<IReadOnlyList<string>> notes, IReadOnlyList<PossibleLink> links) = ShopLinks.Complete(tables, maps, i => standard[i] is null || readings[i].IsAnswered, i => readings[i].AsksKind, words, _answers);
        (IReadOnlyList<ReadingQuestion> questions, int more) = QuestionMaker.Of(
            [.. readings.Select((r, i) => linked[i] is { } map ? r with { Doubts = [.. r.Doubts.Where(d => !IsFoundOtherwise(d, r, map) && !AreKnownCodes(d, r, map, tables) && !IsGivenByPartLines(d, map, linked))] } : r)
                .Where((r, i) => (standard[i] is null || r.IsAnswered) && !(linked[i] is null && maps[i] is not null))],
            readings.SelectMany((r, i) => linked[i] is { } map ? StyleQuestions.Of(r, map, _answers, shop) : []).Concat(wordQuestions.DistinctBy(q => (q.Field, q.Column)))
                .Concat(LinkQuestions.Of(links))
                .Concat(JobNumbers.Question(tables, linked, _answers) is { } numbers ? [numbers] : []));
        return new ShopInspection([.. readings.Select((r, i) => Explain(r, linked[i], notes[i]))], questions, more);
    }

    // A column that was settled without the weights gives no other field, however likely that seemed before; what another
    // table tells by a key is known.
    private static bool IsFoundOtherwise(ColumnDoubt doubt, TableReading reading, SourceMap map)
    {
        if (map.Lists.TryGetValue(doubt.Field, out CodeList? list) && list.Column is not null && doubt.Columns.All(c => reading.Table.Sample.Columns[c].Name == list.Column))
        {
            return true;
        }

        // A column for each van was found.
        if (map.Kind == "van_counts" && (doubt.Field is "van" or "on_hand") && map.Columns.GetValueOrDefault("on_hand", []).Count > 1)
        {
            return true;
        }

        // Notes on the work done may be the only column that says how a job ended.
        bool isLost = doubt.Field == "outcome" && !map.Columns.ContainsKey(doubt.Field);
        bool Settles(Field field) => field.Found != Found.ByWeights && !(isLost && field.Cleaner == Cleaner.NotKept);
        bool IsSettled(int column) => map.Columns.Any(c => c.Key != doubt.Field && c.Value.Contains(reading.Table.Sample.Columns[column].Name) && Settles(FieldCatalog.Get(map.Kind, c.Key)));
        return doubt.Columns.All(IsSettled);
    }

    // Codes whose words in the shop's list are outcomes, or appliances, need no confirmation.
    private bool AreKnownCodes(ColumnDoubt doubt, TableReading reading, SourceMap map, IReadOnlyList<SampledTable> all)
    {
        if (doubt.Chosen < 0 || !map.Lists.TryGetValue(doubt.Field, out CodeList? list) || list.Column is not null || all.FirstOrDefault(t => t.Sample.File == list.File && t.Sample.Sheet == list.Sheet) is not { } home)
        {
            return false;
        }

        ColumnSample? key = home.Sample.Columns.FirstOrDefault(c => c.Name == list.Code), meaning = home.Sample.Columns.FirstOrDefault(c => c.Name == list.Meaning);
        return key is not null && meaning is not null && CodeMeanings.Known(doubt.Field, reading.Table.Sample.Columns[doubt.Chosen], key, meaning, words) >= CodesKnown;
    }

    // A job log without a column for a part lacks nothing where another table lists the parts of its jobs.
    internal static bool IsGivenByPartLines(ColumnDoubt doubt, SourceMap map, IReadOnlyList<SourceMap?> all) =>
        map.Kind == "jobs" && doubt.Chosen < 0 && FieldCatalog.Get(map.Kind, doubt.Field).PartLine && all.Any(m => m is { Kind: "job_parts" } && m.Columns.ContainsKey(doubt.Field));

    // What a table leaves open is as in the shop's other tables.
    private static SourceMap WithStyles(SourceMap map, IReadOnlyList<ColumnProfile> columns, ShopStyles shop) => map with
    {
        DateOrder = map.DateOrder ?? (ShopStyles.Dates(map, columns).Any(d => d.Dates.Ambiguous > 0) ? shop.DateOrder : null),
        NumberStyle = map.NumberStyle ?? (ShopStyles.Amounts(map, columns).Any(a => a.Numbers.Ambiguous > 0) ? shop.NumberStyle : null),
    };

    private Inspection Explain(TableReading reading, SourceMap? map, IReadOnlyList<string> notes)
    {
        SampledTable table = reading.Table;
        return new Inspection(
            table.Sample.File,
            table.Form,
            table.HeaderLine,
            table.Sample.Rows,
            table.BadRows,
            map,
            [.. table.Profiles.Select(c => new ProposedColumn(c.Name, FieldOf(map, c.Name), ReasonOf(map, c)))],
            map is null ? [] : [.. InspectionQuestions.Find(map.WithKeyColumns(), table.Profiles, words)],
            map is null ? [notes.Count > 0 ? notes[0] : LeftOut(reading)] : [.. InspectionQuestions.Notes(map, table.Profiles), .. notes])
        {
            Sheet = table.Sample.Sheet,
            Refusal = table.Refusal,
            Preview = new Lazy<IReadOnlyList<IReadOnlyList<string>>>(() => TablePreview.Of(reading, map)),
        };
    }

    private static string LeftOut(TableReading reading) =>
        reading.Table.Refusal is { } refusal ? $"Left out: {refusal}"
        : reading.IsAnswered ? "Left out, as answered."
        : reading.Table.Sample.Columns.Count == 0 ? "Left out: it holds no table."
        : $"Left out: its columns give nothing of a shop's history ({string.Join(", ", reading.Table.Sample.Columns.Take(8).Select(c => c.Name))}).";

    private static string? FieldOf(SourceMap? map, string column)
    {
        string? field = map?.Columns.Where(f => f.Value.Contains(column)).Select(f => f.Key).FirstOrDefault();
        int group = map?.PartGroups.ToList().FindIndex(g => g.Values.Contains(column)) ?? -1;
        field ??= map?.Lists.Where(l => l.Value.Column == column).Select(l => l.Key).FirstOrDefault();
        return field ?? (group < 0 ? null : $"{map!.PartGroups[group].First(f => f.Value == column).Key} of part {group + 1}");
    }

    private static string ReasonOf(SourceMap? map, ColumnProfile column)
    {
        string cells = CellsInWords.Describe(column);
        string? field = FieldOf(map, column.Name)?.Split(' ')[0];
        int at = field is null ? -1 : ((IList<string>)HeaderLexicon.Shipped.Fields).IndexOf(field);
        bool named = at >= 0 && HeaderLexicon.Shipped.Match(HeaderText.Numbered(column.Name)?.Stem ?? column.Name)[at] >= 0.6;
        return named ? cells + "; its header says so" : cells;
    }
}
