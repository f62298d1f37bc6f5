using PartsSignal.Pipeline.Core;

namespace PartsSignal.Pipeline.Staging;

/// <summary>
/// Stages the files of a shop, several at a time: each by one thread, which does the least work, but all cores share a
/// file that is more than everything behind it, and workbooks go one by one. Which way a file goes changes nothing in what
/// is written.
/// </summary>
/// <param name="stager">Stages a file.</param>
/// <param name="progress">Told of every file at the start and at its end, from several threads, or null if nobody listens.</param>
/// <param name="cores">How many files at a time, 1 or more, or null for one per core, at most four.</param>
internal sealed class ShopStaging(Stager stager, IProgress<StageProgress>? progress = null, int? cores = null)
{
    private const int MostCores = 4;

    // Below this a second thread takes longer to set up than it saves.
    private const long WorthSharing = 1 << 22;

    private readonly int _cores = cores ?? Math.Clamp(Environment.ProcessorCount, 1, MostCores);

    /// <summary>Stages all files.</summary>
    /// <param name="sources">The files.</param>
    /// <param name="cancellation">Stops.</param>
    /// <returns>What became of each, in their order.</returns>
    public async Task<IReadOnlyList<StageOutcome>> RunAsync(IReadOnlyList<SourceFile> sources, CancellationToken cancellation)
    {
        Waiting[] files = [.. sources.Select((s, i) => new Waiting(i, s, s.File.Weight))];
        foreach (Waiting file in files)
        {
            progress?.Report(new StageProgress(file.Source.OwnName, 0, 0, file.Bytes));
        }

        // What mends a file is read in the style that was decided for it.
        var outcomes = new StageOutcome[files.Length];
        await StageAsync([.. files.Where(f => f.Source.Mends is null)], outcomes, cancellation).ConfigureAwait(false);
        await StageAsync([.. files.Where(f => f.Source.Mends is not null)], outcomes, cancellation).ConfigureAwait(false);
        return outcomes;
    }

    // The largest first, so that no large one is left alone at the end.
    private async Task StageAsync(Waiting[] files, StageOutcome[] outcomes, CancellationToken cancellation)
    {
        long left = files.Sum(f => f.Bytes);

        // A workbook is held in memory.
        using var oneWorkbook = new SemaphoreSlim(1);
        var options = new ParallelOptions { MaxDegreeOfParallelism = _cores, CancellationToken = cancellation };
        await Parallel.ForEachAsync(files.OrderByDescending(f => f.Bytes), options, async (file, stop) =>
        {
            bool share = file.Bytes >= WorthSharing && file.Bytes > Interlocked.Add(ref left, -file.Bytes);
            bool waits = file.Source.File.IsWorkbook;
            if (waits)
            {
                await oneWorkbook.WaitAsync(stop).ConfigureAwait(false);
            }

            try
            {
                outcomes[file.At] = await StageAsync(file.Source, share ? _cores : 1, stop).ConfigureAwait(false);
            }
            finally
            {
                if (waits)
                {
                    oneWorkbook.Release();
                }
            }

            progress?.Report(outcomes[file.At].End(file.Source.OwnName, file.Bytes));
        }).ConfigureAwait(false);
    }

    private async Task<StageOutcome> StageAsync(SourceFile source, int workers, CancellationToken cancellation)
    {
        try
        {
            return new StageOutcome(await stager.StageAsync(source, workers, cancellation).ConfigureAwait(false), []);
        }
        catch (BadInputException bad)
        {
            return new StageOutcome(null, bad.Faults);
        }
    }

    private sealed record Waiting(int At, SourceFile Source, long Bytes);
}

/// <summary>What became of one file.</summary>
/// <param name="File">Its staged rows, or null if its map does not suit it.</param>
/// <param name="Faults">Every fault of its map.</param>
internal sealed record StageOutcome(StagedFile? File, IReadOnlyList<string> Faults)
{
    // What was found staged was not read, and says nothing of how long the others take.
    internal StageProgress End(string name, long bytes) => File is { FromCache: false } read ? new(name, read.RowsRead, bytes, bytes) : new(name, 0, 0, 0);
}
