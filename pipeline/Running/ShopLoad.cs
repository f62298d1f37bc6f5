using PartsSignal.Analysis.Sql;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Publishing;
using PartsSignal.Pipeline.Review;
using PartsSignal.Pipeline.Staging;
using PartsSignal.Pipeline.Staging.Tables;
using PartsSignal.Pipeline.Transform;

namespace PartsSignal.Pipeline.Running;

/// <summary>What a load did.</summary>
/// <param name="Rows">What became of every row.</param>
/// <param name="Steps">The combining, step by step.</param>
/// <param name="Staged">The files, with what was decided about them.</param>
/// <param name="Review">Rows of each list for the owner to answer.</param>
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
    /// <summary>What staging, combining and publishing took.</summary>
    public IReadOnlyList<ResourceUsage> Phases { get; init; } = [];

    /// <summary>A message for each file that could not be read; the load went on without it.</summary>
    public IReadOnlyList<string> FileErrors { get; } =
        [.. Staged.Where(s => s.Refused is not null).Select(s => $"{s.SourceFile}: {s.Refused!.Message} {s.Refused.Suggestion} The rest of your data is up to date.")];
}

/// <summary>Stage, combine, publish: a shop's files become the current store, or the last store stays.</summary>
internal static class ShopLoad
{
    /// <summary>Loads the files that <c>shop.json</c> names.</summary>
    /// <param name="input">Folder of the files.</param>
    /// <param name="output">Where the store goes: the caller is the only one that writes there.</param>
    /// <param name="settings">What <c>shop.json</c> says.</param>
    /// <param name="clock">Times the steps and names the store.</param>
    /// <param name="progress">Told now and then how far the reading is; null: nobody.</param>
    /// <param name="cancellation">Stops; the last store stays.</param>
    /// <param name="keepIntermediate">True leaves the tables between staged rows and store in <see cref="OutputFolder.Intermediate"/>.</param>
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
        IReadOnlyList<SourceFile> sources = SourceFile.Find(input, settings);
        var answers = ReviewAnswers.Load(input);
        var stager = new Stager(output, settings, StagingTools.For(output, input), TableStagers.Make, progress);
        IReadOnlyList<StagedFile> staged = await StageAsync(sources, stager, progress, cancellation).ConfigureAwait(false);
        ReleaseMemory();
        ResourceUsage staging = meter.Next("stage");
        string session = SessionFile(output);
        LoadReport report;
        using (Database database = OpenSession(output, session))
        {
            StagedViews.Attach(database, staged);
            answers.Attach(database);
            ResultTable.Write(database, "component_roles", ComponentRole.Load(input));
            IReadOnlyList<ResultLog> steps = TransformRunner.Run(database, new TransformOptions { AsOf = settings.AsOf }, clock, null, cancellation);
            var reconciliation = Reconciliation.Read(database);
            reconciliation.RequireBalance();
            staged = await new UnknownJobs(database, output, settings.Limits).WriteAsync(sources, staged, cancellation).ConfigureAwait(false);
            // What is only written is written by one thread: it is as quick, and takes half the memory.
            database.LimitThreads(1);
            IReadOnlyList<ReviewCount> review = [];
            MemoryRetry.Run(database, MemoryRetry.WritingRungs, () => review = ReviewLists.Write(database, answers, output.Review));
            ResourceUsage combining = meter.Next("combine");
            long rows = StorePublisher.Publish(database, new StoreSwap(output.Store, later: output.Published?.Store), clock);
            stager.Tidy(staged);
            report = new LoadReport(reconciliation, steps, staged, review, database.Count("data_faults"), rows) { Phases = [staging, combining, meter.Next("publish")] };
        }

        if (keepIntermediate)
        {
            // Closed, the session is one file that any client opens.
            File.Move(session, output.Intermediate, overwrite: true);
        }

        return report;
    }

    // A map that does not suit its file stops the load, but only after all files were looked at: every fault at once.
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

    // The tables between staged rows and store stand in a file: in memory they would grow with the rows.
    private static Database OpenSession(OutputFolder output, string file)
    {
        File.Delete(file);
        File.Delete(file + ".wal");
        return Database.Open(new DatabaseOptions { Folders = [output.Kept], File = file, SpillFolder = output.Spill, MemoryLimit = MemoryRetry.Rungs[0] });
    }

    private static string SessionFile(OutputFolder output) => Path.Combine(Directory.CreateDirectory(output.Spill).FullName, "transform.duckdb");

    // What staging left on the managed heap would stand beside the engine's own memory until it is asked for again.
    private static void ReleaseMemory() => GC.Collect(GC.MaxGeneration, GCCollectionMode.Aggressive, blocking: true, compacting: true);
}
