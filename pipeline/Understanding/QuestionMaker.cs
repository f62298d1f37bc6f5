using PartsSignal.Analysis.Vocabulary;
using PartsSignal.Pipeline.Config;

namespace PartsSignal.Pipeline.Understanding;

/// <summary>Puts doubts into questions, the most consequential first and no more than a person will answer.</summary>
internal static class QuestionMaker
{
    /// <summary>Most questions of a shop.</summary>
    public const int Most = 12;

    private const int ExamplesPerColumn = 3;
    private const int MostChoices = 5;
    private const double KindWeight = 100;
    private static readonly string[] Clauses = ["what", "who", "when", "where", "why", "how", "whether", "whose"];

    /// <summary>The questions of a shop, and how many more there would be.</summary>
    /// <param name="readings">What its tables are taken for.</param>
    /// <param name="styles">Questions on how dates and amounts are written.</param>
    public static (IReadOnlyList<ReadingQuestion> Questions, int More) Of(IReadOnlyList<TableReading> readings, IEnumerable<ReadingQuestion> styles)
    {
        var all = new List<ReadingQuestion>();
        foreach (TableReading[] twins in Twins(readings))
        {
            foreach (TableReading[] log in OneLogs(twins))
            {
                if (Array.Find(log, r => r.AsksKind) is { } kind)
                {
                    all.Add(Also(KindQuestion(kind), log));
                }
            }

            foreach (IGrouping<string, TableReading> alike in twins.GroupBy(r => r.Kind, StringComparer.Ordinal))
            {
                TableReading[] group = [.. alike];
                (TableReading Reading, ColumnDoubt Doubt)[] doubts = [.. Shared(group)];

                // Several fields that one column alone could give are one question: what is this column?
                foreach (IGrouping<(TableReading Reading, int), (TableReading Reading, ColumnDoubt Doubt)> column in doubts.Where(d => d.Doubt.Columns.Count == 1).GroupBy(d => (d.Reading, d.Doubt.Columns[0])).Where(g => g.Count() > 1).ToList())
                {
                    all.Add(Also(ColumnQuestion(column.Key.Reading, column.Key.Item2, [.. column.Select(d => d.Doubt)]), group));
                    doubts = [.. doubts.Except(column)];
                }

                all.AddRange(doubts.Select(d => Also(FieldQuestion(d.Reading, d.Doubt), group)));
            }
        }

        all.AddRange(styles);

        ReadingQuestion[] ordered = [.. all.OrderByDescending(q => q.Weight).ThenBy(q => q.Key, StringComparer.Ordinal)];
        return ([.. ordered.Take(Most)], Math.Max(0, ordered.Length - Most));
    }

    /// <summary>Kinds in words.</summary>
    public static string Label(string kind) => kind == KindModels.None ? "none of these: leave it out" : SourceKind.Words(kind) + (kind switch
    {
        "jobs" => ": one row per call or repair",
        "job_parts" => ": one row per part line",
        "units" => ": one row per appliance",
        _ => "",
    });

    // Tables of the same columns, or nearly so, are asked about once: what is answered for one holds for all.
    private static IEnumerable<TableReading[]> Twins(IReadOnlyList<TableReading> readings) => readings
        .GroupBy(r => readings.Select(o => o.Table.Sample).First(t => t == r.Table.Sample || ShopRelations.IsTwin(t, r.Table.Sample)))
        .Select(g => g.ToArray());

    private static IEnumerable<TableReading[]> OneLogs(TableReading[] twins) => twins
        .GroupBy(r => twins.Select(o => o.Table.Sample).First(t => ShopRelations.AreOneLog(t, r.Table.Sample)))
        .Select(g => g.ToArray());

    // Each field's doubt once, with the columns that any of the tables may have for it. What the first table in doubt lacks is asked of another.
    private static IEnumerable<(TableReading Reading, ColumnDoubt Doubt)> Shared(TableReading[] twins)
    {
        var asked = new List<(TableReading Reading, ColumnDoubt Doubt)>();
        foreach (TableReading reading in twins)
        {
            foreach (ColumnDoubt doubt in reading.Doubts)
            {
                int at = asked.FindIndex(a => a.Doubt.Field == doubt.Field);
                int[] columns = at < 0 ? [] : [.. doubt.Columns.Select(c => ColumnIn(asked[at].Reading, reading.Table.Sample.Columns[c].Name)).Where(c => c >= 0)];
                if (columns.Length == 0)
                {
                    asked.Add((reading, doubt));
                }
                else
                {
                    asked[at] = (asked[at].Reading, asked[at].Doubt with { Columns = [.. asked[at].Doubt.Columns.Union(columns).Take(MostChoices)] });
                }
            }
        }

        return asked;
    }

    private static int ColumnIn(TableReading reading, string header) =>
        reading.Table.Sample.Columns.ToList().FindIndex(c => c.Name.Equals(header, StringComparison.OrdinalIgnoreCase));

    private static ReadingQuestion Also(ReadingQuestion question, TableReading[] twins)
    {
        TableSample[] others = [.. twins.Select(r => r.Table.Sample).Where(t => t.File != question.File || t.Sheet != question.Sheet)];
        return others.Length == 0 ? question : question with
        {
            Text = $"{question.Text} Your answer also applies to {string.Join(", ", others.Select(t => $"'{t.Place}'"))}.",
            Also = [.. others.Select(t => (t.File, t.Sheet))],
        };
    }

    private static ReadingQuestion KindQuestion(TableReading reading)
    {
        TableSample table = reading.Table.Sample;
        string[] kinds = [.. reading.Kinds.Select(k => k.Kind)];
        string[] examples = [.. table.Columns.Take(4).SelectMany(c => Examples(c, reading, 1).Select(e => $"{c.Name}: {e}")).Take(ExamplesPerColumn)];
        string taken = reading.Kind == KindModels.None ? "it is left out" : $"it is taken for {Label(reading.Kind)}";
        return new ReadingQuestion(
            reading.Key + "/kind", table.File, table.Sheet, null, null,
            $"What kind of table is '{table.Place}'? Its columns: {string.Join(", ", table.Columns.Take(8).Select(c => $"'{c.Name}'"))}{(table.Columns.Count > 8 ? " and more" : "")}.",
            [.. kinds.Select(k => new QuestionChoice(k, Label(k)))],
            examples,
            $"Everything in it depends on this. Until you answer, {taken}.",
            reading.Kind,
            KindWeight + Math.Log10(1 + table.Rows));
    }

    private static ReadingQuestion FieldQuestion(TableReading reading, ColumnDoubt doubt)
    {
        TableSample table = reading.Table.Sample;
        ColumnSample[] columns = [.. doubt.Columns.Select(c => table.Columns[c])];
        string? chosen = doubt.Chosen < 0 ? null : table.Columns[doubt.Chosen].Name;
        return new ReadingQuestion(
            $"{reading.Key}/field/{doubt.Field}", table.File, table.Sheet, chosen ?? columns[0].Name, doubt.Field,
            Asked(table, columns, FieldCatalog.Get(reading.Kind, doubt.Field).Meaning),
            [.. columns.Select(c => new QuestionChoice(c.Name, $"column '{c.Name}'")), new QuestionChoice(ReadingAnswers.Nothing, "no column holds it")],
            [.. columns.Length > 1 && Apart(columns[0], columns[1], reading).ToArray() is { Length: > 0 } apart
                ? apart
                : columns.Take(2).SelectMany(c => Examples(c, reading, columns.Length > 1 ? 2 : ExamplesPerColumn).Select(e => columns.Length > 1 ? $"{c.Name}: {e}" : e)).Take(ExamplesPerColumn)],
            chosen is null ? $"Until you answer, no column is used for this, and figures that need it are missing." : $"Until you answer, column '{chosen}' is used for this.",
            chosen ?? ReadingAnswers.Nothing,
            doubt.Weight * (reading.Kind is "jobs" or "job_parts" ? 2 : 1) * Math.Log10(10 + table.Rows));
    }

    // "Does column 'Rang' hold the day the customer called?", "Which column says who did the job: 'Tech' or 'Who'?"
    private static string Asked(TableSample table, ColumnSample[] columns, string meaning)
    {
        string said = char.ToLowerInvariant(meaning[0]) + meaning.Split(';', '(')[0].Trim().TrimEnd('.')[1..];
        string first = said.Split(' ')[0];
        bool isClause = Clauses.Contains(first);
        string what = isClause || first == "all" ? said : "the " + said;
        return columns is [var only]
            ? $"Does column '{only.Name}' of '{table.Place}' {(isClause ? "say" : "hold")} {what}?"
            : $"Which column of '{table.Place}' {(isClause ? "says" : "holds")} {what}: {string.Join(" or ", columns.Select(c => $"'{c.Name}'"))}?";
    }

    private static ReadingQuestion ColumnQuestion(TableReading reading, int at, ColumnDoubt[] doubts)
    {
        TableSample table = reading.Table.Sample;
        ColumnSample column = table.Columns[at];
        string[] fields = [.. doubts.OrderByDescending(d => reading.Choice!.Odds[at, ((IList<string>)reading.Choice.Fields).IndexOf(d.Field)]).Select(d => d.Field)];
        string? taken = doubts.FirstOrDefault(d => d.Chosen == at)?.Field;
        return new ReadingQuestion(
            $"{reading.Key}/column/{column.Name}", table.File, table.Sheet, column.Name, taken,
            $"What does column '{column.Name}' of '{table.Place}' hold?",
            [.. fields.Select(f => new QuestionChoice(f, FieldCatalog.Get(reading.Kind, f).Meaning.TrimEnd('.'))), new QuestionChoice(ReadingAnswers.Nothing, "none of these")],
            [.. Examples(column, reading, ExamplesPerColumn)],
            taken is null ? "Until you answer, this column is not used, and figures that need it are missing." : $"Until you answer, it is read as the {taken.Replace('_', ' ')}.",
            taken ?? ReadingAnswers.Nothing,
            doubts.Max(d => d.Weight) * (reading.Kind is "jobs" or "job_parts" ? 2 : 1) * Math.Log10(10 + table.Rows));
    }

    // Of two columns that compete, only a row in which they differ helps to choose.
    private static IEnumerable<string> Apart(ColumnSample one, ColumnSample other, TableReading reading) => Enumerable.Range(0, Math.Min(one.Cells.Length, other.Cells.Length))
        .Where(r => one.Cells[r].Length > 0 && other.Cells[r].Length > 0
            && (one.Days[r] is { } a && other.Days[r] is { } b ? a != b : !one.Cells[r].Equals(other.Cells[r], StringComparison.OrdinalIgnoreCase)))
        .Select(r => $"{one.Name} {MaskedCells.Example(one, one.Cells[r], reading)}, {other.Name} {MaskedCells.Example(other, other.Cells[r], reading)}")
        .Distinct(StringComparer.Ordinal).Take(ExamplesPerColumn - 1);

    private static IEnumerable<string> Examples(ColumnSample column, TableReading reading, int most) =>
        column.Texts.Distinct(StringComparer.OrdinalIgnoreCase).Take(most).Select(t => MaskedCells.Example(column, t, reading));
}
