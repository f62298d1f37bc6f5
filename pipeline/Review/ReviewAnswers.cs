using System.Globalization;
using PartsSignal.Analysis.CrossReference;
using PartsSignal.Analysis.CrossReference.SerialDates;
using PartsSignal.Analysis.Sql;
using PartsSignal.Pipeline.Commands;

namespace PartsSignal.Pipeline.Review;

/// <summary>What the owner answered in the review lists that lie beside the shop's files.</summary>
public sealed class ReviewAnswers
{
    private static readonly string[] Monthly = ["yyyy-MM", "MM/yyyy", "yyyy/MM"];
    private readonly Dictionary<string, IReadOnlyList<ReviewRow>> _lists;

    private ReviewAnswers(Dictionary<string, IReadOnlyList<ReviewRow>> lists) => _lists = lists;

    /// <summary>Reads the lists.</summary>
    /// <exception cref="BadInputException">An answer cannot be understood; all faults together.</exception>
    public static ReviewAnswers Load(string input)
    {
        var lists = ReviewNames.All.ToDictionary(n => n, n => (IReadOnlyList<ReviewRow>)[.. ReviewFile.Read(input, n).Where(r => r.Answer.Length > 0)]);
        string[] faults = [.. lists[ReviewNames.Serials].Where(r => Built(r.Answer) is null).Select(r =>
            $"{r.File}, row {r.Line}, answer '{r.Answer}': write a build year or month, 2017 or 2017-04.")];
        return faults.Length == 0 ? new ReviewAnswers(lists) : throw new BadInputException(faults);
    }

    /// <summary>Answered rows of one list, in the order they stand.</summary>
    public IReadOnlyList<ReviewRow> Of(string list) => _lists[list];

    /// <summary>Puts the answers where the combining SQL reads them.</summary>
    public void Attach(Database database)
    {
        database.Run("Review/answers.sql");
        Put(database, "review_part_numbers", _lists[ReviewNames.PartNumbers].Concat(_lists[ReviewNames.Collisions])
            .Where(r => !Is(r.Answer, "ignore") && r["number"].Length > 0)
            .Select(r => new NumberAnswer(
                r["supplier"].Length > 0 ? r["supplier"] : null, r["number"], CompactKey.Of(r["number"]), Is(r.Answer, "new") ? null : CompactKey.Of(r.Answer), r.File, r.Line)));
        Put(database, "review_components", _lists[ReviewNames.Components].Select(r => new ComponentAnswer(Plain(r["description"]), r.Answer)).DistinctBy(r => r.Description));
        Put(database, "review_complaints", _lists[ReviewNames.Complaints].Where(r => r["words"].Length > 0).Select(r => new ComplaintAnswer(Plain(r["words"]), r.Answer)).DistinctBy(r => r.Words));
        Put(database, "review_families", _lists[ReviewNames.Families].Select(r => new FamilyAnswer(r["learned_family"], r.Answer)).DistinctBy(r => r.LearnedFamily));
        Put(database, "review_builds", _lists[ReviewNames.Serials].Select(r => new BuildAnswer(r["job_id"], Built(r.Answer)!.From, Built(r.Answer)!.To)).DistinctBy(r => r.JobId));
    }

    private static void Put<T>(Database database, string table, IEnumerable<T> rows)
    {
        ResultTable.Write(database, "answers_read", rows);
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

    private sealed record NumberAnswer(string? Supplier, string Typed, string TypedKey, string? AnswerKey, string SourceFile, int SourceLine);

    private sealed record ComponentAnswer(string Description, string Component);

    private sealed record ComplaintAnswer(string Words, string ComplaintKind);

    private sealed record FamilyAnswer(string LearnedFamily, string ModelFamily);

    private sealed record BuildAnswer(string JobId, DateOnly MadeFrom, DateOnly MadeTo);
}
