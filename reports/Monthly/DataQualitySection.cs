using PartsSignal.Reports.Components;

namespace PartsSignal.Reports.Monthly;

/// <summary>Data quality: what to mend first and what it would improve.</summary>
public static class DataQualitySection
{
    /// <summary>Puts the section together.</summary>
    public static Section Build(DataQualityFacts facts) => new("data", "The data, and what to mend first", [.. Blocks(facts)]);

    private static IEnumerable<IBlock> Blocks(DataQualityFacts facts)
    {
        if (facts.Files.Count == 0)
        {
            yield return new Missing("No file was read.");
            yield break;
        }

        long read = facts.Files.Sum(f => f.Read), rejected = facts.Files.Sum(f => f.Rejected);
        yield return new Paragraph(First(facts, read, rejected));
        yield return new TableView("gaps", "What is missing on jobs", "All jobs in the store, worst first.",
            [new("Missing"), new("Jobs", CellKind.Count), new("Of", CellKind.Count), new("Share", CellKind.Share), new("What it costs")],
            [.. facts.Gaps.Select(g => (IReadOnlyList<object?>)[g.What, g.Jobs, g.Of, g.Of == 0 ? null : (double)g.Jobs / g.Of, g.Costs])],
            "Nothing that the answers use is missing.");
        yield return new TableView("rejects", "Rows that could not be read, by reason", $"{Format.Count(rejected)} of {Format.Count(read)} rows, all files; each row is listed in the rejects folder.",
            [new("Reason"), new("Field"), new("Rows", CellKind.Count), new("First at"), new("How to mend")],
            [.. facts.Reasons.Select(r => (IReadOnlyList<object?>)[Format.Words(r.Code), r.Field, r.Rows, r.Example, r.Mend])],
            "Every row could be read.");
        yield return new TableView("faults", "Contradictions in the data", "Found when the files were put together.",
            [new("Kind"), new("Count", CellKind.Count), new("For example")],
            [.. facts.Faults.Select(f => (IReadOnlyList<object?>)[Format.Words(f.Kind), f.Count, f.Example])],
            "The files do not contradict each other.");
        yield return new TableView("files", "The books of each file", "Read = loaded + duplicate + replaced + rejected.",
            [new("File"), new("Kind"), new("Read", CellKind.Count), new("Loaded", CellKind.Count), new("Duplicate", CellKind.Count), new("Replaced", CellKind.Count), new("Rejected", CellKind.Count)],
            [.. facts.Files.Select(f => (IReadOnlyList<object?>)[f.File, Format.Words(f.Kind), f.Read, f.Loaded, f.Duplicate, f.Replaced, f.Rejected])]);
    }

    private static string First(DataQualityFacts facts, long read, long rejected)
    {
        string rows = rejected == 0
            ? $"All {Format.Count(read)} rows could be read."
            : $"{Format.Count(rejected)} of {Format.Count(read)} rows could not be read; most often: {Format.Words(facts.Reasons.FirstOrDefault()?.Code)} ({Format.Count(facts.Reasons.FirstOrDefault()?.Rows ?? 0)} rows).";
        return facts.Gaps.FirstOrDefault() is { Jobs: > 0 } gap
            ? $"{rows} Mend first: {gap.What}, missing on {Format.Count(gap.Jobs)} of {Format.Count(gap.Of)} jobs. {gap.Costs}"
            : rows;
    }
}
