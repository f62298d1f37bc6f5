using System.Globalization;
using PartsSignal.Pipeline.Reading;

namespace PartsSignal.Pipeline.Understanding;

/// <summary>Tells from sampled rows whether job numbers repeat for different days, within a log or from year to year, and what tells their jobs apart.</summary>
internal static class JobNumbers
{
    /// <summary>End of the key by which a person says what a job number is told apart by.</summary>
    public const string AnswerKey = "job-numbers";

    /// <summary>What can be added to a job number, as the transform names it; the number alone last.</summary>
    public static IReadOnlyList<string> Ways { get; } = ["year", "technician", "technician and year", "file", Alone];

    private const string Alone = "number";
    private const int Fewest = 3;
    private const double Weight = 6;

    /// <summary>What a person answered; null: nobody said.</summary>
    /// <param name="answers">Key of the question to the choice.</param>
    public static string? Answered(IReadOnlyDictionary<string, string> answers) =>
        answers.Where(a => a.Key.EndsWith("/" + AnswerKey, StringComparison.Ordinal) && Ways.Contains(a.Value)).Select(a => a.Value).Order(StringComparer.Ordinal).FirstOrDefault();

    /// <summary>What to note about the job logs, or null if their numbers tell their jobs.</summary>
    /// <param name="tables">The tables.</param>
    /// <param name="maps">Their maps; null: left out.</param>
    public static string? Note(IReadOnlyList<SampledTable> tables, IReadOnlyList<SourceMap?> maps) => Test([.. Rows(tables, maps)]) is not { } test ? null
        : string.Create(CultureInfo.InvariantCulture, $"Job numbers: of {test.Repeated:N0} used on more than one of the rows we looked at, {test.Differ:N0} have different dates, so the number alone does not identify a job. When you load the files, we add the year, the technician or the file, whichever tells them all apart, and say which.");

    /// <summary>The question what tells the jobs apart, with the counts that speak for each answer; null: their numbers do, or somebody said.</summary>
    /// <param name="tables">The tables.</param>
    /// <param name="maps">Their maps; null: left out.</param>
    /// <param name="answers">What a person has settled.</param>
    public static ReadingQuestion? Question(IReadOnlyList<SampledTable> tables, IReadOnlyList<SourceMap?> maps, ReadingAnswers answers)
    {
        JobRow[] rows = [.. Rows(tables, maps)];
        if (Answered(answers.Given) is not null || Test(rows) is not { } test)
        {
            return null;
        }

        (string Way, int Left)[] ways = [.. Ways.Where(w => w == Alone || rows.Select(r => Apart(r, w)).Distinct().Count() > 1).Select(w => (w, Differing(rows, w)))];
        (string Way, int Left) best = ways.Where(w => w.Way != Alone).OrderBy(w => w.Left).FirstOrDefault((Alone, test.Differ));
        string chosen = best.Left * 10 <= test.Differ ? best.Way : Alone;
        SampledTable first = tables[rows[0].Table];
        string[] examples = [.. rows.GroupBy(r => r.Number, StringComparer.OrdinalIgnoreCase).Where(g => g.Select(r => r.Day).Distinct().Count() > 1).Take(3).Select(g => g.Key)];
        return new ReadingQuestion(
            $"{ReadingAnswers.KeyOf(first.Sample)}/{AnswerKey}", first.Sample.File, first.Sample.Sheet, maps[rows[0].Table]!.Columns["job_id"][0], "job_id",
            string.Create(CultureInfo.InvariantCulture, $"{test.Differ:N0} of {test.Repeated:N0} job numbers used on more than one row have different dates. What tells these jobs apart?"),
            [.. ways.Select(w => new QuestionChoice(w.Way, Label(w.Way, w.Left)))],
            examples,
            $"Until you answer, {(chosen == Alone ? "each appliance and date counts as a separate job" : $"a job is its number and {chosen}")}, unless the full file shows otherwise.",
            chosen,
            Weight);
    }

    private static string Label(string way, int left) => way == Alone
        ? "nothing: each appliance and date is a separate job"
        : string.Create(CultureInfo.InvariantCulture, $"the {way}: {left:N0} {(left == 1 ? "number is" : "numbers are")} still used for different dates");

    private static (int Repeated, int Differ)? Test(JobRow[] rows)
    {
        int repeated = rows.GroupBy(r => r.Number, StringComparer.OrdinalIgnoreCase).Count(g => g.Skip(1).Any());
        int differ = Differing(rows, Alone);
        return differ < Fewest || differ * 5 < repeated ? null : (repeated, differ);
    }

    private static int Differing(JobRow[] rows, string way) => rows
        .GroupBy(r => (Apart(r, way), r.Number.ToUpperInvariant()))
        .Count(g => g.Select(r => r.Day).Distinct().Skip(1).Any());

    private static string Apart(JobRow row, string way) => way switch
    {
        "year" => row.Year,
        "technician" => row.Technician,
        "technician and year" => $"{row.Technician}/{row.Year}",
        "file" => row.File,
        _ => "",
    };

    private static IEnumerable<JobRow> Rows(IReadOnlyList<SampledTable> tables, IReadOnlyList<SourceMap?> maps)
    {
        for (int t = 0; t < tables.Count; t++)
        {
            if (maps[t] is not { Kind: "jobs" } map || Column(tables[t], map, "job_id") is not { } numbers || Column(tables[t], map, "opened_on") is not { } opened)
            {
                continue;
            }

            ColumnSample? technicians = Column(tables[t], map, "technician");
            for (int i = 0; i < numbers.Cells.Length; i++)
            {
                if (numbers.Cells[i].Length > 0 && opened.Days[i] is { } day)
                {
                    string year = DateOnly.FromDayNumber(day).Year.ToString(CultureInfo.InvariantCulture);
                    yield return new JobRow(t, map.JobPrefix + numbers.Cells[i], day, year, technicians?.Cells[i] ?? "", tables[t].Sample.File);
                }
            }
        }
    }

    private static ColumnSample? Column(SampledTable table, SourceMap map, string field) =>
        map.Columns.TryGetValue(field, out IReadOnlyList<string>? headers) && headers.Count == 1 ? table.Sample.Columns.FirstOrDefault(c => c.Name == headers[0]) : null;

    private sealed record JobRow(int Table, string Number, int Day, string Year, string Technician, string File);
}
