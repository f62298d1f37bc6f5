using System.Globalization;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Understanding;

/// <summary>
/// Finds the columns with ages and with the days ages count from, by their headers and cells, and settles the unit of
/// ages: the header says it, dates of the same rows prove it, or a person is asked.
/// </summary>
internal static class AgeFields
{
    private const double Named = 0.75;
    private const double Weight = 2;
    private const int MostExamples = 3;

    // Few appliances are older than this: more such numbers are hardly years.
    private const double OldYears = 20;
    private const double OldShare = 0.05;
    private const double OldestMonths = 40 * 12;

    // Dates settle the unit when nearly all of enough rows agree with one unit and with no other.
    private const int EnoughDated = 10;
    private const double Agreeing = 0.8;
    private const double Other = 0.4;

    private static readonly HashSet<string> YearWords =
        [.. WordTable.Read(WordTable.ReadDefault("age-unit-words.csv"), null, "field", "").SelectMany(w => w.Stems)];

    private static readonly string[] Births = ["made_on", "purchased_on", "installed_on"];

    /// <summary>Fields that tell an age, each in its unit, with how many units make a year.</summary>
    private static readonly (string Field, double PerYear, string Label)[] Units = [("age_years", 1, "years"), ("age_months", 12, "months"), ("age_days", 365.25, "days")];

    /// <summary>The map with such columns, and what to ask.</summary>
    /// <param name="reading">What the table is taken for.</param>
    /// <param name="map">Its map so far.</param>
    /// <param name="answers">What a person has settled.</param>
    public static (SourceMap Map, IReadOnlyList<ReadingQuestion> Questions) Complete(TableReading reading, SourceMap map, ReadingAnswers answers)
    {
        foreach (Field field in FieldCatalog.Of(map.Kind).Where(f => f.Found == Found.ByHeader))
        {
            string? given = answers.Header(reading.Key, field.Name) ?? reading.Table.AllColumns.FirstOrDefault(c => answers.Field(reading.Key, c.Name) == field.Name)?.Name;
            string? header = given is null ? (map.Columns.ContainsKey(field.Name) ? null : Find(reading, map, field, answers)) : reading.Table.AllColumns.FirstOrDefault(c => c.Name == given)?.Name;
            string? from = header is null ? null : Array.Find(Births, b => b != field.Name && map.Columns.GetValueOrDefault(b) is [var only] && only == header);
            map = header is null ? map : map.WithColumn(field.Name, header);
            map = from is not null && Find(reading, map, FieldCatalog.Get(map.Kind, from), answers) is { } instead ? map.WithColumn(from, instead) : map;
        }

        return Settle(reading, map, answers);
    }

    private static string? Find(TableReading reading, SourceMap map, Field field, ReadingAnswers answers)
    {
        // A day that the header calls a purchase was taken for another start of the appliance's life.
        HashSet<string> used = [.. map.Columns.Where(c => !(field.Found == Found.ByHeader && Births.Contains(c.Key) && Score(c.Value[0], c.Key) < Score(c.Value[0], field.Name))).SelectMany(c => c.Value), .. map.PartGroups.SelectMany(g => g.Values)];
        return reading.Table.Sample.Columns
            .Where(c => c.Filled > 0 && (field.Cleaner == Cleaner.Day ? c.IsDates : c.IsNumbers) && !used.Contains(c.Name) && answers.Field(reading.Key, c.Name) is null)
            .Select(c => (c.Name, c.Index, Score: Score(c.Name, field.Name)))
            .Where(c => c.Score >= Named && BestOther(c.Name, field) < c.Score)
            .OrderByDescending(c => c.Score).ThenBy(c => c.Index)
            .Select(c => c.Name)
            .FirstOrDefault();
    }

    private static double Score(string header, string field) => Math.Max(Score(HeaderLexicon.Shipped, header, field), Score(WordFields.Headers, header, field));

    private static double Score(HeaderLexicon words, string header, string field) => ((IList<string>)words.Fields).IndexOf(field) is var at and >= 0 ? words.Match(header)[at] : 0;

    // What else a header of this kind of table may mean; names that begin with ~ are no fields.
    private static double BestOther(string header, Field field)
    {
        IReadOnlyList<string> fields = FieldCatalog.Names(field.Kind)!;
        IEnumerable<double> Others(HeaderLexicon words) => words.Match(header).Where((_, i) => words.Fields[i] != field.Name && (words.Fields[i][0] == '~' || fields.Contains(words.Fields[i])));
        return Others(HeaderLexicon.Shipped).Concat(Others(WordFields.Headers)).Max();
    }

    // The unit of the column that is read as an age.
    private static (SourceMap Map, IReadOnlyList<ReadingQuestion> Questions) Settle(TableReading reading, SourceMap map, ReadingAnswers answers)
    {
        string[] possible = [.. Units.Select(u => u.Field).Where(f => FieldCatalog.Names(map.Kind)!.Contains(f))];
        if (Array.Find(possible, map.Columns.ContainsKey) is not { } now
            || reading.Table.Sample.Columns.FirstOrDefault(c => c.Name == map.Columns[now][0]) is not { } column
            || answers.Field(reading.Key, column.Name) is not null || answers.Header(reading.Key, now) is not null)
        {
            return (map, []);
        }

        string? told = possible.Where(f => f != Units[0].Field).FirstOrDefault(f => Score(column.Name, f) >= Named && Score(column.Name, f) > Score(column.Name, Units[0].Field));
        told ??= PlainHeader.Words(column.Name).Any(YearWords.Contains) ? Units[0].Field : Proved(reading, map, column, possible);
        if (told is not null)
        {
            return (told == now ? map : map.WithColumn(told, column.Name), []);
        }

        double[] ages = [.. column.Numbers.OfType<double>().Where(n => n >= 0)];
        if (ages.Length == 0 || ages.Count(a => a > OldYears) < OldShare * ages.Length)
        {
            return (map, []);
        }

        string taken = ages.Max() <= OldYears * 2 ? Units[0].Field : ages.Max() > OldestMonths && possible.Contains(Units[2].Field) ? Units[2].Field : Units[1].Field;
        return (taken == now ? map : map.WithColumn(taken, column.Name), [Question(reading, column, taken, possible, ages)]);
    }

    // The unit in which the ages agree with the dates of the same rows; null: there are too few, or none agrees.
    private static string? Proved(TableReading reading, SourceMap map, ColumnSample column, string[] possible)
    {
        ColumnSample? seen = Dates("opened_on") ?? Dates("listed_on");
        ColumnSample[] births = [.. Births.Select(Dates).OfType<ColumnSample>()];
        if (seen is null || births.Length == 0)
        {
            return null;
        }

        (double Age, double Years)[] dated = [.. Enumerable.Range(0, column.Cells.Length)
            .Select(i => (Age: column.Numbers[i], Born: births.Select(b => b.Days[i]).FirstOrDefault(d => d is not null), Seen: seen.Days[i]))
            .Where(r => r.Age is not null && r.Born is not null && r.Seen >= r.Born)
            .Select(r => (r.Age!.Value, (r.Seen!.Value - r.Born!.Value) / 365.25))];
        if (dated.Length < EnoughDated)
        {
            return null;
        }

        (string Field, double Share)[] shares = [.. Units.Where(u => possible.Contains(u.Field))
            .Select(u => (u.Field, dated.Count(d => Math.Abs((d.Age / u.PerYear) - d.Years) <= 1) / (double)dated.Length)).OrderByDescending(s => s.Item2)];
        return shares[0].Share >= Agreeing && shares[1].Share <= Other ? shares[0].Field : null;

        ColumnSample? Dates(string field) => map.Columns.GetValueOrDefault(field) is [var header, ..] ? reading.Table.Sample.Columns.FirstOrDefault(c => c.Name == header && c.IsDates) : null;
    }

    private static ReadingQuestion Question(TableReading reading, ColumnSample column, string taken, string[] possible, double[] ages)
    {
        TableSample table = reading.Table.Sample;
        string label = Units.First(u => u.Field == taken).Label;
        return new ReadingQuestion(
            $"{reading.Key}/column/{column.Name}", table.File, table.Sheet, column.Name, taken,
            string.Create(CultureInfo.InvariantCulture, $"Column '{column.Name}' of '{table.Place}' has ages up to {ages.Max():0.#}. Are they in {string.Join(" or ", Units.Where(u => possible.Contains(u.Field)).Select(u => u.Label))}?"),
            [.. Units.Where(u => possible.Contains(u.Field)).Select(u => new QuestionChoice(u.Field, u.Label)), new QuestionChoice(ReadingAnswers.Nothing, "not appliance ages")],
            [.. column.Texts.Distinct(StringComparer.OrdinalIgnoreCase).Take(MostExamples).Select(t => MaskedCells.Show(column, t))],
            $"Failure rates by age depend on this. Until you answer, we read them as {label}.",
            taken,
            Weight * Math.Log10(10 + table.Rows));
    }
}
