using System.Globalization;
using PartsSignal.Analysis.CrossReference;
using PartsSignal.Analysis.Sql;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.DateCodes;

namespace PartsSignal.Pipeline.Review;

/// <summary>
/// The owner's answers from the review lists next to the shop's files. An answer that cannot be used does not stop the
/// load: it returns in its list with a note that says why.
/// </summary>
internal sealed class ReviewAnswers
{
    private static readonly string[] Monthly = ["yyyy-MM", "MM/yyyy", "yyyy/MM"];
    private readonly Dictionary<string, IReadOnlyList<ReviewRow>> _lists;
    private readonly PlainAnswers _names;

    private ReviewAnswers(Dictionary<string, IReadOnlyList<ReviewRow>> lists, PlainAnswers names) => (_lists, _names) = (lists, names);

    /// <summary>Reads the lists.</summary>
    /// <exception cref="BadInputException">A list lacks its answer column.</exception>
    public static ReviewAnswers Load(string input)
    {
        var lists = ReviewNames.All.ToDictionary(n => n, n => (IReadOnlyList<ReviewRow>)[.. ReviewFile.Read(input, n).Where(r => r.Answer.Length > 0)]);
        return new ReviewAnswers(lists, new PlainAnswers(input));
    }

    /// <summary>Answered rows of one list, in file order.</summary>
    public IReadOnlyList<ReviewRow> Rows(string list) => _lists[list];

    /// <summary>Names of appliances that the owner assigned to a type: of the tables, of the shop's own, or <c>other</c>. They are read like words of the tables.</summary>
    public IReadOnlyList<(string Name, string Type)> Appliances =>
        [.. Rows(ReviewNames.Appliances).Where(r => !Is(r.Answer, PlainAnswers.Ignore)).Select(r => (r["appliance_type"].Replace('_', ' '), _names.Name(ReviewNames.Appliances, r.Answer)!)).Where(r => r.Item2 is not null)];

    /// <summary>What the owner says of learned date codes. An answer that is neither yes nor no is left out; its note says so.</summary>
    public IReadOnlyList<DateCodeAnswer> DateCodes =>
        [.. Rows(ReviewNames.DateCodes).Where(r => DateCodeFault(r) is null && !Is(r.Answer, PlainAnswers.Ignore)).Select(r =>
            new DateCodeAnswer(r["brand"], r["serial_form"], r["date_code"], Named(ReviewNames.DateCodes, r.Answer) == PlainAnswers.Yes, Rule(r)))];

    /// <summary>Loads the answers into the tables that the transform SQL reads.</summary>
    public void Attach(Database database)
    {
        database.Run("staging/review_answers.sql");
        Put(database, "review_part_numbers", ReviewNames.PartNumbers, "number", r => new NumberAnswer(
            r["supplier"].Length > 0 ? r["supplier"] : null, r["number"], CompactKey.From(r["number"]), r.Answer, Is(r.Answer, "new") ? null : CompactKey.From(r.Answer), r.File, r.Line));
        Put(database, "review_collisions", ReviewNames.Collisions, "number", r => new CollisionAnswer(
            r["fault_kind"], r["number"], CompactKey.From(r["number"]), r.Answer, CompactKey.From(r.Answer), r.File, r.Line));
        Put(database, "review_models", ReviewNames.Models, "model_key", r => new ModelAnswer(r["model_key"], r.Answer, CompactKey.From(r.Answer), r.File, r.Line));
        Put(database, "review_components", ReviewNames.Components, "description", r => new ComponentAnswer(Plain(r["description"]), Named(ReviewNames.Components, r.Answer), r.File, r.Line));
        Put(database, "review_appliances", ReviewNames.Appliances, "appliance_type", r => new ApplianceAnswer(Plain(r["appliance_type"]), Named(ReviewNames.Appliances, r.Answer), r.File, r.Line));
        Put(database, "review_outcomes", ReviewNames.Outcomes, "outcome_word", r => new OutcomeAnswer(Plain(r["outcome_word"]), Named(ReviewNames.Outcomes, r.Answer), r.File, r.Line));
        Put(database, "review_complaints", ReviewNames.Complaints, "words", r => new ComplaintAnswer(Plain(r["words"]), Named(ReviewNames.Complaints, r.Answer), r.File, r.Line));
        Put(database, "review_families", ReviewNames.Families, "learned_family", r => new FamilyAnswer(r["learned_family"], r.Answer, r.File, r.Line));
        Put(database, "review_date_codes", ReviewNames.DateCodes, "rule", r => new DateCodeAnswerRow($"{r["brand"]} {r["serial_form"]} {r["date_code"]}", r.Answer, DateCodeFault(r), r.File, r.Line));
        Put(database, "review_builds", ReviewNames.Serials, "job_id", BuildAnswer.Parse);
        ResultTable.Write(database, "known_appliance_types", _names.Choices(ReviewNames.Appliances).Concat(Appliances.Select(a => a.Type)).Distinct(StringComparer.Ordinal).Select(t => new TypeRow(t)));
        ResultTable.Write(database, "known_outcomes", _names.Choices(ReviewNames.Outcomes).Select(o => new OutcomeRow(o)));
        ResultTable.Write(database, "answers_read", _names.Choices(ReviewNames.Complaints).Select(k => new KindRow(k)));
        database.Execute("insert into complaint_kinds by name from answers_read");
    }

    private void Put<T>(Database database, string table, string list, string subject, Func<ReviewRow, T> row)
    {
        ResultTable.Write(database, "answers_read", _lists[list].Where(r => r[subject].Length > 0 && !Is(r.Answer, PlainAnswers.Ignore)).Select(row));
        database.Execute($"insert into {Database.Quote(table)} by name from answers_read");
    }

    private static BuildInterval? Built(string answer)
    {
        if (DateOnly.TryParseExact(answer, Monthly, CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly month))
        {
            return BuildInterval.Month(month.Year, month.Month);
        }

        return int.TryParse(answer, NumberStyles.None, CultureInfo.InvariantCulture, out int year) && year is > 1900 and < 2100 ? BuildInterval.Year(year) : null;
    }

    // An answer that means no name stays as typed, so that its note can quote it.
    private string Named(string list, string answer) => _names.Name(list, answer) ?? Plain(answer);

    // Null: the answer can be used.
    private string? DateCodeFault(ReviewRow row) => _names.Name(ReviewNames.DateCodes, row.Answer) switch
    {
        null => "is neither yes nor no",
        PlainAnswers.Yes when SerialDateRule.Create(Rule(row), out IReadOnlyList<string> faults) is null => $"cannot be used: {string.Join("; ", faults)}",
        _ => null,
    };

    private static SerialDateRuleText Rule(ReviewRow row) =>
        new(row["brand"], row["pattern"], row["year_letters"], row["year_of_first"], row["cycle_years"], row["month_letters"], row["weeks"]);

    private static string Plain(string text) => text.Trim().ToLowerInvariant();

    private static bool Is(string answer, string word) => answer.Equals(word, StringComparison.OrdinalIgnoreCase);

    private sealed record NumberAnswer(string? Supplier, string Typed, string TypedKey, string Answer, string? AnswerKey, string SourceFile, int SourceLine);

    private sealed record CollisionAnswer(string FaultKind, string Subject, string SubjectKey, string Answer, string AnswerKey, string SourceFile, int SourceLine);

    private sealed record ModelAnswer(string ModelKey, string Answer, string AnswerKey, string SourceFile, int SourceLine);

    private sealed record ComponentAnswer(string Description, string Component, string SourceFile, int SourceLine);

    private sealed record ApplianceAnswer(string ApplianceType, string Answer, string SourceFile, int SourceLine);

    private sealed record OutcomeAnswer(string OutcomeWord, string Outcome, string SourceFile, int SourceLine);

    private sealed record ComplaintAnswer(string Words, string ComplaintKind, string SourceFile, int SourceLine);

    private sealed record FamilyAnswer(string LearnedFamily, string ModelFamily, string SourceFile, int SourceLine);

    private sealed record BuildAnswer(string JobId, string Answer, DateOnly? MadeFrom, DateOnly? MadeTo, string SourceFile, int SourceLine)
    {
        public static BuildAnswer Parse(ReviewRow row)
        {
            BuildInterval? built = Built(row.Answer);
            return new BuildAnswer(row["job_id"], row.Answer, built?.From, built?.To, row.File, row.Line);
        }
    }

    private sealed record DateCodeAnswerRow(string DateCode, string Answer, string? Fault, string SourceFile, int SourceLine);

    private sealed record TypeRow(string ApplianceType);

    private sealed record OutcomeRow(string Outcome);

    private sealed record KindRow(string ComplaintKind);
}
