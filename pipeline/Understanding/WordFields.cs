using PartsSignal.Pipeline.Cleaning;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Understanding;

/// <summary>
/// Finds the columns that are known by the words in their cells (whether a job is finished, what a visit was for) or by
/// their header alone (the component at fault, repair notes), among those that no other field has by its name. A column is taken when our
/// table knows nearly all its cells, or when its header names the field; where two columns would do, a person is asked.
/// </summary>
internal static class WordFields
{
    private const double NearlyAll = 0.9;
    private const double Most = 0.6;
    private const double Named = 0.75;
    private const double Weight = 1.5;
    private const double Plainly = 0.85;
    private const double Partly = 0.75;
    private const int MostWords = 40;
    private const int MostNames = 12;
    private const int MostExamples = 3;

    // Headers of columns with such words, and of those that hold the same words about something else.
    public static HeaderLexicon Headers { get; } = new(WordTable.ReadDefault("word-field-headers.csv"));

    /// <summary>A column that may give the field.</summary>
    /// <param name="Column">The column.</param>
    /// <param name="Known">Share of its cells that our table knows.</param>
    /// <param name="Name">How well its header names the field, 0 to 1.</param>
    /// <param name="Meanings">Different meanings among its cells.</param>
    private sealed record Candidate(ColumnSample Column, double Known, double Name, int Meanings)
    {
        /// <summary>One word on every row tells nothing unless the header does.</summary>
        public bool IsSure => (Known >= NearlyAll && (Meanings > 1 || Name >= Named)) || (Known >= Most && Name >= Named);

        public bool IsPossible => Known >= Most || (Name >= Named && Known > 0);
    }

    /// <summary>The map with such columns, and what to ask.</summary>
    /// <param name="reading">What the table is taken for.</param>
    /// <param name="map">Its map so far.</param>
    /// <param name="answers">What a person has settled.</param>
    /// <param name="words">The tables of words.</param>
    public static (SourceMap Map, IReadOnlyList<ReadingQuestion> Questions) Complete(TableReading reading, SourceMap map, ReadingAnswers answers, WordSets words)
    {
        var questions = new List<ReadingQuestion>();
        foreach (Field field in FieldCatalog.Of(map.Kind).Where(f => f.Found is Found.ByWords or Found.ByName && !map.Columns.ContainsKey(f.Name)))
        {
            if (answers.Header(reading.Key, field.Name) is { } given)
            {
                map = reading.Table.AllColumns.Any(c => c.Name == given) ? map.WithColumn(field.Name, given) : map;
                continue;
            }

            Candidate[] candidates = [.. field.Found == Found.ByWords ? Candidates(reading, map, field.Name, answers, words.Of(field.Name)) : WithHeader(reading, map, field, answers, words)];
            Candidate? taken = candidates.FirstOrDefault(c => c.IsSure);
            map = taken is null ? map : map.WithColumn(field.Name, taken.Column.Name);
            if (candidates.Count(c => c.IsSure) > 1 || (taken is null && candidates.Length > 0))
            {
                questions.Add(Question(reading, field, taken, candidates));
            }
        }

        return (map, questions);
    }

    private static IEnumerable<Candidate> Candidates(TableReading reading, SourceMap map, string field, ReadingAnswers answers, SynonymTable words)
    {
        HashSet<string> used = [.. map.Columns.SelectMany(c => c.Value), .. map.PartGroups.SelectMany(g => g.Values)];
        return reading.Table.Sample.Columns
            .Where(c => c.Filled > 0 && c.Distinct <= MostWords && !c.IsDates && !c.IsNumbers && !used.Contains(c.Name) && answers.Field(reading.Key, c.Name) is null)
            .Select(c => Of(c, field, words))
            .OfType<Candidate>()
            .Where(c => c.IsPossible)
            .OrderByDescending(c => c.Name + c.Known)
            .ThenBy(c => c.Column.Index);
    }

    // A header that plainly names the field, over cells that can be of it.
    private static IEnumerable<Candidate> WithHeader(TableReading reading, SourceMap map, Field field, ReadingAnswers answers, WordSets words)
    {
        HashSet<string> used = [.. map.Columns.Where(m => !IsLoose(m.Key, field) || m.Value.Count > 1 || IsNamed(m.Key, m.Value[0])).SelectMany(c => c.Value), .. map.PartGroups.SelectMany(g => g.Values)];
        return reading.Table.Sample.Columns
            .Where(c => c.Filled > 0 && !used.Contains(c.Name) && answers.Field(reading.Key, c.Name) is null && CanBe(c, field, words))
            .Select(c => (Column: c, Naming(c, field.Name).Name, Naming(c, field.Name).IsOther))
            .Where(c => c.Name >= Plainly && !c.IsOther)
            .Select(c => new Candidate(c.Column, 1, c.Name, 2))
            .OrderByDescending(c => c.Name)
            .ThenBy(c => c.Column.Index);
    }

    // Fields that take any words: they give back a column whose header does not name them.
    private static readonly string[] LooseFields = ["complaint", "description"];

    // What is at fault was taken for what was fitted.
    private static bool IsLoose(string field, Field by) => LooseFields.Contains(field) || (field == "part" && by.Name == "fault_component");

    private static bool IsNamed(string field, string header) => HeaderLexicon.Shipped.Match(header)[((IList<string>)HeaderLexicon.Shipped.Fields).IndexOf(field)] >= Partly;

    private static bool CanBe(ColumnSample column, Field field, WordSets words) => field.Cleaner switch
    {
        Cleaner.Day or Cleaner.ApproximateDay => column.IsDates,
        Cleaner.Flag => !column.IsDates && column.Texts.All(t => YesNoText.TryRead(t, out _) || EmptyMark.Is(t)),
        // A few words, nearly all of which say how a job ends, are no notes.
        Cleaner.NotKept => !column.IsDates && !column.IsNumbers && !(column.Distinct <= MostNames && column.Texts.Count(t => words.Outcomes.Find(t) is not null) >= NearlyAll * column.Filled),
        // A handful of names, each many times; not codes.
        _ => !column.IsDates && !column.IsNumbers && column.Distinct <= Math.Max(MostNames, column.Filled / 3) && column.Texts.Count(t => t.Any(char.IsAsciiDigit)) * 3 < column.Filled,
    };

    // How well the header names the field, 0 to 1, and whether it names something else better.
    private static (double Name, bool IsOther) Naming(ColumnSample column, string field)
    {
        double[] names = Headers.Match(column.Name);
        double own = names[((IList<string>)Headers.Fields).IndexOf(field)];
        return (own, Headers.Fields.Select((f, i) => (f, i)).Any(f => f.f != field && names[f.i] >= Named && names[f.i] > own));
    }

    // Null: the header says that the words are about something else.
    private static Candidate? Of(ColumnSample column, string field, SynonymTable words)
    {
        (double own, bool isOther) = Naming(column, field);
        string?[] meanings = [.. column.Texts.Select(words.Find)];
        return isOther ? null : new Candidate(column, meanings.Count(m => m is not null) / (double)column.Filled, own, meanings.OfType<string>().Distinct().Count());
    }

    private static ReadingQuestion Question(TableReading reading, Field field, Candidate? taken, Candidate[] candidates)
    {
        TableSample table = reading.Table.Sample;
        string meaning = field.Meaning.TrimEnd('.');
        ColumnSample[] columns = [.. candidates.Select(c => c.Column).Take(4)];
        return new ReadingQuestion(
            $"{reading.Key}/field/{field.Name}", table.File, table.Sheet, columns[0].Name, field.Name,
            $"Which column of '{table.Place}' shows {char.ToLowerInvariant(meaning[0])}{meaning[1..]}? It could be {string.Join(" or ", columns.Select(c => $"'{c.Name}'"))}.",
            [.. columns.Select(c => new QuestionChoice(c.Name, $"column '{c.Name}'")), new QuestionChoice(ReadingAnswers.Nothing, "none of them")],
            [.. columns[0].Texts.Distinct(StringComparer.OrdinalIgnoreCase).Take(MostExamples).Select(t => MaskedCells.Show(columns[0], t))],
            taken is null ? "Until you answer, no column is used for this." : $"Until you answer, column '{taken.Column.Name}' is used for this.",
            taken?.Column.Name ?? ReadingAnswers.Nothing,
            Weight * Math.Log10(10 + table.Rows));
    }
}
