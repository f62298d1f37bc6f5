using PartsSignal.Analysis.CrossReference;
using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.VanPlan;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.DateCodes;
using PartsSignal.Pipeline.Privacy;
using PartsSignal.Pipeline.Publishing;
using PartsSignal.Pipeline.Rejects;
using PartsSignal.Pipeline.Review;
using PartsSignal.Pipeline.Staging;
using PartsSignal.Pipeline.Staging.Tables;
using PartsSignal.Pipeline.Transform;
using PartsSignal.Pipeline.Understanding;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Running;

/// <summary>Result of a load.</summary>
/// <param name="Rows">Row counts by outcome.</param>
/// <param name="Steps">Tables the transform made, with rows and time.</param>
/// <param name="Staged">The staged files, with the decisions made for each.</param>
/// <param name="Review">Open rows of each review list.</param>
/// <param name="DataFaults">Contradictions in the data.</param>
/// <param name="StoredRows">Rows of all tables of the store.</param>
internal sealed record LoadReport(
    Reconciliation Rows,
    IReadOnlyList<ResultLog> Steps,
    IReadOnlyList<StagedFile> Staged,
    IReadOnlyList<ReviewCount> Review,
    long DataFaults,
    long StoredRows)
{
    /// <summary>Resource usage of staging, transform and publishing.</summary>
    public IReadOnlyList<ResourceUsage> Phases { get; init; } = [];

    /// <summary>Row counts of each file, in source order, with its lines that are not data: titles, repeated headers and footers.</summary>
    public IReadOnlyList<(FileCounts Rows, long NotData)> Files { get; } =
        [.. Rows.Files.Zip(Staged.OrderBy(s => s.SourceOrder), (rows, staged) => (rows, staged.NotData))];

    /// <summary>The same for all files together.</summary>
    public (FileCounts Rows, long NotData) Total => (Rows.Total, Staged.Sum(s => s.NotData));

    /// <summary>What the load assumed about the data, a sentence each.</summary>
    public IReadOnlyList<string> Assumptions { get; init; } = [];

    /// <summary>Jobs that count as finished without a closing day.</summary>
    public required AssumedClosing Closing { get; init; }

    /// <summary>The date codes that were learned, used or not, with the jobs that they gave an age.</summary>
    public IReadOnlyList<DateCodeRule> DateCodes { get; init; } = [];

    /// <summary>What became of a lost key, or null if it was there.</summary>
    public string? KeyNotice { get; init; }

    /// <summary>One message per file that could not be read; the load continues without it.</summary>
    public IReadOnlyList<string> FileErrors { get; } =
        [.. Staged.Where(s => s.Refused is not null).Select(s => $"{s.SourceFile}: {s.Refused!.Message} {s.Refused.Suggestion} The rest of your data is up to date.")];
}

/// <summary>Stages, transforms and publishes a shop's files. On failure the previous store stays current.</summary>
internal static class ShopLoad
{
    // Up to this, waking a second thread for every statement costs more than the thread saves, and so does a file for the tables.
    private const long SmallRows = 20_000;

    /// <summary>Loads the files that <c>shop.json</c> names.</summary>
    /// <param name="input">Folder of the files.</param>
    /// <param name="output">Folder for the store; the caller must hold its lock.</param>
    /// <param name="settings">What <c>shop.json</c> says.</param>
    /// <param name="clock">Times the steps and stamps the store's name.</param>
    /// <param name="progress">Receives progress while reading, or null for no progress.</param>
    /// <param name="cancellation">Cancels the load; the previous store stays current.</param>
    /// <param name="keepIntermediate">True keeps the intermediate tables in <see cref="OutputFolder.Intermediate"/>.</param>
    public static async Task<LoadReport> RunAsync(
        string input,
        OutputFolder output,
        ShopSettings settings,
        TimeProvider clock,
        IProgress<StageProgress>? progress,
        CancellationToken cancellation,
        bool keepIntermediate = false)
    {
        var meter = new ResourceMeter(clock);
        var sheets = SheetMaps.Apply(input, settings with { Sources = [.. settings.Sources.Select(m => m.WithKeyColumns())] }, cancellation);
        IReadOnlyList<SourceFile> sources = CodeLists.Apply(input, SourceFile.Find(input, WideCounts.Apply(sheets.Settings)), settings.Limits, cancellation);
        var answers = ReviewAnswers.Load(input);
        bool lostKey = !File.Exists(output.Key) && Directory.Exists(output.Stage) && Directory.EnumerateDirectories(output.Stage).Any();
        var codes = SerialCodes.Load(input);
        IReadOnlyList<DateCodeRule> dateCodes = DateCodeChoice.Decide(
            new DateCodeSearch(output, settings, codes).Run(sources, cancellation), [.. answers.DateCodes.Where(a => !codes.Rules.Names(a.Brand))]);
        var tools = StagingTools.For(output, input, codes.With([.. dateCodes.Where(c => c.InUse).Select(c => c.ToText())]), answers.Appliances);
        var stager = new Stager(output, settings, tools, TableStagers.Make, progress, clock);
        IReadOnlyList<StagedFile> staged = await StageAsync(sources, stager, progress, cancellation).ConfigureAwait(false);
        staged = MendedRows.Mark(sources, staged);
        long rowsRead = staged.Sum(s => s.RowsRead);
        if (rowsRead > SmallRows)
        {
            ReleaseMemory();
        }

        ResourceUsage staging = meter.Next("stage");
        string? session = keepIntermediate || rowsRead > SmallRows ? Path.Combine(output.Spill, "transform.duckdb") : null;
        LoadReport report;
        using (Database database = OpenSession(output, session, rowsRead, keepIntermediate))
        {
            bool initials = settings.Technicians == "initials";
            VanLabels labels = StagedViews.Attach(database, staged, initials ? [.. settings.Vans.Select(v => VanName.Key(v.Van, tools.Key))] : null);
            answers.Attach(database);
            ResultTable.Write(database, "component_roles", ComponentRole.Load(input));
            PartNames.Attach(database, tools.Words.Components);
            OwnComplaints.Attach(database);
            ResultTable.Write(database, "learned_date_codes", dateCodes);
            IReadOnlyList<ResultLog> steps = TransformRunner.Run(database, new TransformOptions { AsOf = settings.AsOf, Vans = initials ? labels.Name(settings.Vans, tools.Key) : settings.Vans, JobKey = JobNumbers.Answered(settings.Answers) }, clock, null, cancellation);
            var reconciliation = Reconciliation.Read(database);
            reconciliation.RequireBalance();
            staged = await new UnknownJobs(database, output, settings.Limits, tools.Forgotten, new RejectAge(clock, settings.RejectsDays)).WriteAsync(sources, staged, cancellation).ConfigureAwait(false);
            // Export single-threaded: same speed, half the memory.
            database.LimitThreads(1);
            IReadOnlyList<ReviewCount> review = [];
            MemoryRetry.Run(database, MemoryRetry.WritingRungs(database), () => review = ReviewLists.Write(database, answers, output.Review));
            ResourceUsage transform = meter.Next("combine");
            long rows = StorePublisher.Publish(database, new StoreSwap(output.Store, later: output.Published?.Store), clock);
            stager.Tidy(staged);
            var closing = AssumedClosing.Read(database);
            report = new LoadReport(reconciliation, steps, staged, review, database.Count("data_faults"), rows)
            {
                Phases = [staging, transform, meter.Next("publish")],
                KeyNotice = KeyNotice(lostKey, tools.Forgotten),
                Assumptions = [.. sheets.Notes, .. new[] { MendedRows.Unclaimed(input, sources, settings.Limits), StandInColumns.Sentence(sources), CarriedDayVote.Sentence(staged), JobKey.Read(database)?.Sentence, closing.Sentence, ChargeLines.Read(database).Sentence, PlannedVisits.Read(database).Sentence, VanStandIn.Of(database)?.Sentence }.OfType<string>()],
                Closing = closing,
                DateCodes = DateCodeRule.Read(database),
            };
        }

        if (keepIntermediate)
        {
            // A closed session is a single database file that any client can open.
            File.Move(session!, output.Intermediate, overwrite: true);
        }

        return report;
    }

    // A column map that does not fit its file stops the load, but only after all files are staged, so that every fault is reported.
    private static async Task<List<StagedFile>> StageAsync(IReadOnlyList<SourceFile> sources, Stager stager, IProgress<StageProgress>? progress, CancellationToken cancellation)
    {
        IReadOnlyList<StageOutcome> outcomes = await new ShopStaging(stager, progress).RunAsync(sources, cancellation).ConfigureAwait(false);
        var staged = outcomes.Select(o => o.File).OfType<StagedFile>().ToList();
        var faults = outcomes.SelectMany(o => o.Faults).ToList();
        if (faults.Count == 0 && staged.TrueForAll(s => s.Refused is not null))
        {
            faults.AddRange(staged.Select(s => $"{s.SourceFile}: {s.Refused!.Message} {s.Refused.Suggestion}"));
        }

        return faults.Count == 0 ? staged : throw new BadInputException(faults);
    }

    private static string? KeyNotice(bool lost, ForgottenCustomers forgotten) =>
        lost || forgotten.IsForOtherKey
            ? "identity.key was lost: a new one was made and every file was read again." + (forgotten.IsForOtherKey ? " The list of forgotten customers was made with the old key: run 'partssignal forget' again for each." : "")
            : null;

    // The tables of a large load go to a file: in memory they would grow with the row count.
    private static Database OpenSession(OutputFolder output, string? file, long rows, bool keep)
    {
        string spill = Directory.CreateDirectory(output.Spill).FullName;
        if (file is not null)
        {
            File.Delete(file);
            File.Delete(file + ".wal");
        }

        int threads = rows <= SmallRows ? 1 : Environment.ProcessorCount;
        return Database.Open(new DatabaseOptions { Threads = threads, HoldsLittle = file is null, Folders = [output.Kept], File = file, FileIsTemporary = !keep, SpillFolder = spill, MemoryLimit = MemoryRetry.Rungs[0] });
    }

    // Returns staging's managed heap to the system before the engine needs the memory.
    private static void ReleaseMemory() => GC.Collect(GC.MaxGeneration, GCCollectionMode.Aggressive, blocking: true, compacting: true);
}
