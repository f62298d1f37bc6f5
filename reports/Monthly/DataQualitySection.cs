using PartsSignal.Analysis.CrossReference;
using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Vocabulary;
using PartsSignal.Reports.Components;

namespace PartsSignal.Reports.Monthly;

/// <summary>What is wrong with the data, and what to fill in first.</summary>
/// <param name="Files">The reconciliation of each file.</param>
/// <param name="Reasons">Rejects by reason, most first.</param>
/// <param name="Faults">Contradictions found in the data, by kind.</param>
/// <param name="Gaps">What is missing on jobs, what brings back most answers first.</param>
internal sealed record DataQualityFacts(
    IReadOnlyList<FileBooks> Files, IReadOnlyList<RejectReason> Reasons, IReadOnlyList<FaultKind> Faults, IReadOnlyList<Gap> Gaps)
{
    /// <summary>Columns of the job log, and how many jobs tell them, most first.</summary>
    public IReadOnlyList<ToldColumn> Told { get; init; } = [];

    /// <summary>Rules for date codes in serials that were learned from the shop's files.</summary>
    public IReadOnlyList<DateCodeRule> DateCodes { get; init; } = [];

    /// <summary>Visits that are no failures, by their reason, most first.</summary>
    public IReadOnlyList<OtherVisits> Others { get; init; } = [];
}

/// <summary>Visits of a reason other than a failure.</summary>
internal sealed record OtherVisits(string VisitReason, long Jobs);

/// <summary>A column of the job log.</summary>
/// <param name="ColumnName">Its name.</param>
/// <param name="Jobs">Jobs that tell it.</param>
/// <param name="Expected">Jobs in all.</param>
internal sealed record ToldColumn(string ColumnName, long Jobs, long Expected);

/// <summary>The reconciliation of one file: rows read = loaded + duplicate + replaced + rejected.</summary>
internal sealed record FileBooks(string SourceFile, string Kind, long RowsRead, long Loaded, long Duplicate, long Replaced, long Rejected)
{
    /// <summary>Readings of one file as one kind, such as a table with a column of pieces for each van, in one line.</summary>
    public static FileBooks Together(IEnumerable<FileBooks> readings) => readings.Aggregate((a, b) => a with
    {
        RowsRead = a.RowsRead + b.RowsRead,
        Loaded = a.Loaded + b.Loaded,
        Duplicate = a.Duplicate + b.Duplicate,
        Replaced = a.Replaced + b.Replaced,
        Rejected = a.Rejected + b.Rejected,
    });
}

/// <summary>Rows rejected for one reason.</summary>
/// <param name="Code">The reason's code.</param>
/// <param name="Field">The field, or null for the whole row.</param>
/// <param name="Rows">How many.</param>
/// <param name="Example">File and line of the first.</param>
/// <param name="Fix">What to do.</param>
internal sealed record RejectReason(string Code, string? Field, long Rows, string Example, string Fix);

/// <summary>Contradictions of one kind.</summary>
internal sealed record FaultKind(string Kind, long Faults, string Example);

/// <summary>Data quality: what to fill in first and what it would improve.</summary>
internal static class DataQualitySection
{
    private sealed record Reason(string ReasonCode, string? Field, long Rejects, string FirstFile, int FirstLine, string Mend);

    private sealed record Fault(string FaultKind, long Faults, string Example);

    /// <summary>The reconciliation of the files, the rejects, and what is missing on jobs.</summary>
    public static DataQualityFacts Read(Database database) => new(
        [.. database.ReadTable<FileBooks>("loads").GroupBy(f => (f.SourceFile, f.Kind)).Select(FileBooks.Together)
            .OrderBy(f => f.SourceFile, StringComparer.Ordinal).ThenBy(f => f.Kind, StringComparer.Ordinal)],
        [.. database.Read<Reason>("queries/report/reject_reasons.sql")
            .Select(r => new RejectReason(r.ReasonCode, r.Field, r.Rejects, $"{r.FirstFile}, line {Format.Count(r.FirstLine)}", r.Mend))],
        [.. database.Read<Fault>("queries/report/fault_kinds.sql").Select(f => new FaultKind(f.FaultKind, f.Faults, f.Example))],
        Gap.Read(database))
    {
        Told = database.Read<ToldColumn>("queries/report/told_columns.sql"),
        DateCodes = DateCodeRule.Read(database),
        Others = database.Read<OtherVisits>("queries/report/other_visits.sql"),
    };

    public static Section Build(DataQualityFacts facts) => new("data", "The data, and what to fill in first", [.. Blocks(facts)]);

    private static IEnumerable<IBlock> Blocks(DataQualityFacts facts)
    {
        if (facts.Files.Count == 0)
        {
            return [new Missing("No file was read.")];
        }

        long read = facts.Files.Sum(f => f.RowsRead), rejected = facts.Files.Sum(f => f.Rejected);
        return
        [
            new Paragraph(First(facts, read, rejected)),
            .. facts.Others.Take(1).Select(_ => new Paragraph(
                $"Visits that are not failures: {string.Join(", ", facts.Others.Select(o => $"{Format.Count(o.Jobs)} {Format.Words(o.VisitReason)}"))}. They are left out of failure rates, age curves, trends, callbacks, predictions and the van plan. The monthly figures include them.")),
            .. LearnedDates(facts.DateCodes) is { } learned ? [new Paragraph(learned)] : Array.Empty<IBlock>(),
            TableView.Create("gaps", "What is missing on jobs",
                "Failure calls that are not still open. The fix that helps the most jobs comes first. A job missing two things needs both before it counts. If the information is already in one of your files, tell us which column it is in.", facts.Gaps,
                [
                    new("Missing", g => g.What), new("Jobs", g => g.Jobs, CellKind.Count), new("Of", g => g.Of, CellKind.Count),
                    new("Share", g => g.Of == 0 ? null : (double)g.Jobs / g.Of, CellKind.Share), new("More jobs counted", g => g.BroughtBack, CellKind.Count),
                    new("In which figures", g => g.Answers), new("How to fix it", g => g.Fix),
                ]) with { WhenEmpty = "Nothing that the answers use is missing." },
            .. facts.Told.Where(t => t.Expected > 0).Take(1).Select(_ => TableView.Create(
                "told", "What the job log says", "All jobs in the store. A column that is filled in can be used to compare jobs.", facts.Told,
                [
                    new("Column", t => t.ColumnName == "model_raw" ? "model number" : Format.Words(t.ColumnName)), new("Jobs that have it", t => t.Jobs, CellKind.Count), new("Of", t => t.Expected, CellKind.Count),
                    new("Share", t => t.Expected == 0 ? null : (double)t.Jobs / t.Expected, CellKind.Share),
                ])),
            TableView.Create("rejects", "Rows that could not be read, by reason",
                $"{Format.Count(rejected)} of {Format.Count(read)} rows, all files; each row is listed in the rejects folder.", facts.Reasons,
                [
                    new("Reason", r => Format.Words(r.Code)), new("Field", r => r.Field), new("Rows", r => r.Rows, CellKind.Count), new("First at", r => r.Example),
                    new("How to fix it", r => r.Fix),
                ]) with { WhenEmpty = "Every row could be read." },
            TableView.Create("faults", "Contradictions in the data", "Found when the files were put together.", facts.Faults,
                [new("Kind", f => Format.Words(f.Kind)), new("Count", f => f.Faults, CellKind.Count), new("For example", f => f.Example)]) with
            {
                WhenEmpty = "The files do not contradict each other.",
            },
            TableView.Create("files", "The books of each file", "Rows read = loaded + same again + replaced + refused. Files that were left out are not listed.", facts.Files,
                [
                    new("File", f => f.SourceFile), new("Read as", f => SourceKind.Words(f.Kind)), new("Read", f => f.RowsRead, CellKind.Count), new("Loaded", f => f.Loaded, CellKind.Count),
                    new("Same again", f => f.Duplicate, CellKind.Count), new("Replaced", f => f.Replaced, CellKind.Count), new("Refused", f => f.Rejected, CellKind.Count),
                ]),
        ];
    }

    // Null: nothing was learned.
    private static string? LearnedDates(IReadOnlyList<DateCodeRule> codes)
    {
        DateCodeRule[] used = [.. codes.Where(c => c.InUse)];
        DateCodeRule[] asked = [.. codes.Where(c => c.Basis == "asked")];
        string?[] sentences =
        [
            used.Length == 0 ? null : $"Serial numbers of {Brands(used)} tell the build date. The program learned how from {Format.Count(used.Sum(c => c.Confirming))} appliances whose dates are in your files; {Format.Count(OfBrands(used).Sum(c => c.JobsAged))} jobs have their age from it.",
            asked.Length == 0 ? null : $"For {Brands(asked)} a rule is likely but not certain: answer review-date-codes.csv.",
        ];
        return sentences.OfType<string>().ToArray() is { Length: > 0 } said ? string.Join(' ', said) : null;
    }

    private static string Brands(IEnumerable<DateCodeRule> codes) => string.Join(", ", OfBrands(codes).Select(c => c.Brand));

    // Serials of two forms may name their brand in two ways, and each rule counts the jobs of its whole brand.
    private static IEnumerable<DateCodeRule> OfBrands(IEnumerable<DateCodeRule> codes) => codes.DistinctBy(c => CompactKey.From(c.Brand));

    private static string First(DataQualityFacts facts, long read, long rejected)
    {
        string rows = rejected == 0
            ? $"All {Format.Count(read)} rows could be read."
            : $"{Format.Count(rejected)} of {Format.Count(read)} rows could not be read; most often: {Format.Words(facts.Reasons.FirstOrDefault()?.Code)} ({Format.Count(facts.Reasons.FirstOrDefault()?.Rows ?? 0)} rows).";
        return Gap.First(facts.Gaps) is { } first ? $"{rows} {first}" : rows;
    }
}
