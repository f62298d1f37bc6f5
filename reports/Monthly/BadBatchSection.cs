using PartsSignal.Analysis.Sql;
using PartsSignal.Reports.Components;

namespace PartsSignal.Reports.Monthly;

/// <summary>Units of certain build months that fail more often than the family's others.</summary>
/// <param name="Batches">Those found, clearest first, each with its jobs, newest first.</param>
/// <param name="Scanned">Families and components that could have shown one.</param>
/// <param name="AsOf">Last day the data covers.</param>
internal sealed record BadBatchFacts(IReadOnlyList<(SuspectBatch Batch, IReadOnlyList<AlarmJob> Jobs)> Batches, long Scanned, DateOnly AsOf);

/// <summary>One suspect batch.</summary>
internal sealed record SuspectBatch(
    string ApplianceType, string ModelFamily, string Component, DateOnly BuiltFrom, DateOnly BuiltTo, int? UnderYears, long Cases, long Calls, long OtherCases, long OtherCalls,
    double Expected, long BuiltLaterCalls, long LargestCustomerCases, bool SurvivesCustomer, long? UnitsOut, long? UnitsListed)
{
    /// <summary>For example: washer inlet valve, family K41, built January 2023 to March 2023.</summary>
    public string Name => $"{SeriesName.Describe(ApplianceType, Component, ModelFamily)}, built {Built}";

    private string Built => BuiltFrom == BuiltTo ? $"in {Format.Month(BuiltFrom)}" : $"{Format.Month(BuiltFrom)} to {Format.Month(BuiltTo)}";
}

/// <summary>Bad batches: which units, how clear it is, how many are still out there, and what to do.</summary>
internal static class BadBatchSection
{
    private const int Drawn = 5;
    private const int JobsShown = 25;
    private const int FewLater = 10;

    private sealed record Tests(long Scanned);

    public static BadBatchFacts? Read(Database database, DateOnly asOf) => !database.Has("bad_batches") || !database.Has("bad_batch_tests")
        ? null
        : new BadBatchFacts(
            [.. database.ReadTable<SuspectBatch>("bad_batches").Select(b =>
                (b, database.Read<AlarmJob>("queries/report/bad_batch_jobs.sql", ("type", b.ApplianceType), ("family", b.ModelFamily), ("component", b.Component))))],
            database.Single<Tests>("queries/report/bad_batch_scanned.sql")?.Scanned ?? 0,
            asOf);

    public static Section Build(BadBatchFacts? facts) => new("batches", "Bad batches", [.. Blocks(facts)]);

    private static IEnumerable<IBlock> Blocks(BadBatchFacts? facts)
    {
        if (facts is null)
        {
            return [new Missing("Bad batches were not looked for in this run.")];
        }

        if (facts.Scanned == 0)
        {
            return [new Missing("Bad batches cannot be looked for yet: too few jobs have a known cause, a known model family and a known build month.")];
        }

        return
        [
            new Paragraph(facts.Batches.Count == 0
                ? $"No build months of any family stand out. We compared the build months of {Format.Count(facts.Scanned)} combinations of family and part, up to {Format.Day(facts.AsOf)}."
                : $"Up to {Format.Day(facts.AsOf)} we compared the build months of {Format.Count(facts.Scanned)} combinations of family and part. Even if no batch is bad, up to 1 report in 10 would still name one. Read the jobs before you act."),
            .. facts.Batches.Take(Drawn).SelectMany((b, i) => Batch(b.Batch, b.Jobs, i + 1)),
        ];
    }

    private static IEnumerable<IBlock> Batch(SuspectBatch batch, IReadOnlyList<AlarmJob> jobs, int number)
    {
        yield return new SubHeading($"{number}. {Format.Capital(batch.Name)}");
        yield return new Paragraph(Evidence(batch));
        yield return new Paragraph(WhatToDo(batch));
        yield return TableView.Create($"batch-jobs-{number}", $"Jobs behind it: {batch.Name}",
            jobs.Count > JobsShown ? $"The newest {JobsShown} of {Format.Count(jobs.Count)} jobs." : $"{Format.Count(jobs.Count)} jobs.",
            jobs.Take(JobsShown),
            [
                new("Job", j => j.JobId, CellKind.Code), new("Called on", j => j.OpenedOn, CellKind.Day), new("Model", j => j.Model), new("Age, years", j => j.AgeYears, CellKind.Number),
                new("Complaint", j => j.ComplaintText), new("Part fitted", j => j.Parts), new("Supplier", j => j.Supplier),
            ]) with
        {
            WhenEmpty = "The jobs behind this batch are not listed.",
        };
    }

    private static string Evidence(SuspectBatch batch)
    {
        string part = Format.Words(batch.Component);
        string age = batch.UnderYears is { } years ? $" under {years} years of age" : "";
        var lines = new List<string>
        {
            $"Of {Format.Count(batch.Calls)} calls about these machines{age}, {Format.Count(batch.Cases)} needed the {part}. If build months made no difference, about {Format.Count((long)Math.Round(batch.Expected))} of the family's {Format.Count(batch.Cases + batch.OtherCases)} such calls{age} would have been about these machines.",
            $"Of the family's other {Format.Count(batch.OtherCalls)} calls{age}, {Format.Count(batch.OtherCases)} did.",
        };
        if (!batch.SurvivesCustomer)
        {
            lines.Add($"One customer has {Format.Count(batch.LargestCustomerCases)} of these cases, and without that customer the difference is no longer clear. Look at how the machines are used there first.");
        }

        if (batch.BuiltLaterCalls < FewLater)
        {
            lines.Add("There are too few calls yet about machines built later, so it is not known whether the fault has ended. A problem that began recently for another reason would look the same.");
        }

        return string.Join(" ", lines);
    }

    private static string WhatToDo(SuspectBatch batch)
    {
        string part = Format.Words(batch.Component);
        string units = batch.UnitsOut switch
        {
            null => "How many of these machines are still out there is unknown.",
            0 => "Every one of these machines that you know of has had it.",
            { } left when batch.UnitsListed > 0 => $"You know of {Format.Count(left)} more of these machines that have not had it yet, {Format.Count(batch.UnitsListed ?? 0)} of them on your register: consider telling their owners.",
            { } left => $"You know of {Format.Count(left)} more of these machines that have not had it yet, all from earlier jobs. There may be others.",
        };
        return $"What to do: check the {part} whenever you are at one of these machines, and carry one. {units} Ask the manufacturer or your supplier about a known fault, and keep the old parts as evidence for a claim.";
    }
}
