using System.Globalization;
using PartsSignal.Analysis.CrossReference;
using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Vocabulary;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Review;

/// <summary>
/// The owner's answers from the review lists next to the shop's files. An answer that cannot be used does not stop the
/// load: it returns in its list with a note that says why.
/// </summary>
internal sealed class ReviewAnswers
{
    private static readonly string[] Monthly = ["yyyy-MM", "MM/yyyy", "yyyy/MM"];
    private static readonly string[] ApplianceTypes = [.. ApplianceType.Named, ApplianceType.Other];
    private readonly Dictionary<string, IReadOnlyList<ReviewRow>> _lists;
    private readonly IReadOnlyList<string> _complaintKinds;

    private ReviewAnswers(Dictionary<string, IReadOnlyList<ReviewRow>> lists, IReadOnlyList<string> complaintKinds) =>
        (_lists, _complaintKinds) = (lists, complaintKinds);

    /// <summary>Reads the lists.</summary>
    /// <exception cref="BadInputException">A list lacks its answer column.</exception>
    public static ReviewAnswers Load(string input)
    {
        var lists = ReviewNames.All.ToDictionary(n => n, n => (IReadOnlyList<ReviewRow>)[.. ReviewFile.Read(input, n).Where(r => r.Answer.Length > 0)]);
        return new ReviewAnswers(lists, WordSets.ComplaintKinds(input));
    }

    /// <summary>Answered rows of one list, in file order.</summary>
    public IReadOnlyList<ReviewRow> Rows(string list) => _lists[list];

    /// <summary>Names of appliances that the owner assigned to a type of the tables, or to <c>other</c>; they are read like words of the tables.</summary>
    public IReadOnlyList<(string Name, string Type)> Appliances =>
        [.. Rows(ReviewNames.Appliances).Select(r => (r["appliance_type"].Replace('_', ' '), Plain(r.Answer))).Where(r => ApplianceTypes.Contains(r.Item2))];

    /// <summary>Loads the answers into the tables that the transform SQL reads.</summary>
    public void Attach(Database database)
    {
        database.Run("staging/review_answers.sql");
        Put(database, "review_part_numbers", ReviewNames.PartNumbers, "number", r => new NumberAnswer(
            r["supplier"].Length > 0 ? r["supplier"] : null, r["number"], CompactKey.From(r["number"]), r.Answer, Is(r.Answer, "new") ? null : CompactKey.From(r.Answer), r.File, r.Line));
        Put(database, "review_collisions", ReviewNames.Collisions, "number", r => new CollisionAnswer(
            r["fault_kind"], r["number"], CompactKey.From(r["number"]), r.Answer, CompactKey.From(r.Answer), r.File, r.Line));
        Put(database, "review_models", ReviewNames.Models, "model_key", r => new ModelAnswer(r["model_key"], r.Answer, CompactKey.From(r.Answer), r.File, r.Line));
        Put(database, "review_components", ReviewNames.Components, "description", r => new ComponentAnswer(Plain(r["description"]), Plain(r.Answer), r.File, r.Line));
        Put(database, "review_appliances", ReviewNames.Appliances, "appliance_type", r => new ApplianceAnswer(Plain(r["appliance_type"]), Plain(r.Answer), r.File, r.Line));
        Put(database, "review_complaints", ReviewNames.Complaints, "words", r => new ComplaintAnswer(Plain(r["words"]), Plain(r.Answer), r.File, r.Line));
        Put(database, "review_families", ReviewNames.Families, "learned_family", r => new FamilyAnswer(r["learned_family"], r.Answer, r.File, r.Line));
        Put(database, "review_builds", ReviewNames.Serials, "job_id", BuildAnswer.Parse);
        ResultTable.Write(database, "known_appliance_types", ApplianceTypes.Select(t => new TypeRow(t)));
        ResultTable.Write(database, "answers_read", _complaintKinds.Select(k => new KindRow(k)));
        database.Execute("insert into complaint_kinds by name from answers_read");
    }

    private void Put<T>(Database database, string table, string list, string subject, Func<ReviewRow, T> row)
    {
        ResultTable.Write(database, "answers_read", _lists[list].Where(r => r[subject].Length > 0 && !Is(r.Answer, "ignore")).Select(row));
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

    private static string Plain(string text) => text.Trim().ToLowerInvariant();

    private static bool Is(string answer, string word) => answer.Equals(word, StringComparison.OrdinalIgnoreCase);

    private sealed record NumberAnswer(string? Supplier, string Typed, string TypedKey, string Answer, string? AnswerKey, string SourceFile, int SourceLine);

    private sealed record CollisionAnswer(string FaultKind, string Subject, string SubjectKey, string Answer, string AnswerKey, string SourceFile, int SourceLine);

    private sealed record ModelAnswer(string ModelKey, string Answer, string AnswerKey, string SourceFile, int SourceLine);

    private sealed record ComponentAnswer(string Description, string Component, string SourceFile, int SourceLine);

    private sealed record ApplianceAnswer(string ApplianceType, string Answer, string SourceFile, int SourceLine);

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

    private sealed record TypeRow(string ApplianceType);

    private sealed record KindRow(string ComplaintKind);
}
