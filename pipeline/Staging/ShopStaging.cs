using PartsSignal.Pipeline.Commands;

namespace PartsSignal.Pipeline.Staging;

/// <summary>
/// Stages the files of a shop, several at a time: each by one thread, which does the least work, but all cores share a
/// file that is more than everything behind it. Which way a file goes changes nothing in what is written.
/// </summary>
/// <param name="stager">Stages a file.</param>
/// <param name="cores">How many threads work, 1 or more.</param>
public sealed class ShopStaging(Stager stager, int cores)
{
    private const int MostCores = 4;

    // Below this a second thread takes longer to set up than it saves.
    private const long WorthSharing = 1 << 22;

    /// <summary>Stages with the cores of this machine, four at most: more wait for the disk.</summary>
    public ShopStaging(Stager stager)
        : this(stager, Math.Clamp(Environment.ProcessorCount, 1, MostCores))
    {
    }

    /// <summary>Stages all files.</summary>
    /// <param name="sources">The files.</param>
    /// <param name="cancellation">Stops.</param>
    /// <returns>What became of each, in their order.</returns>
    public async Task<IReadOnlyList<StageOutcome>> RunAsync(IReadOnlyList<SourceFile> sources, CancellationToken cancellation)
    {
        var outcomes = new StageOutcome[sources.Count];

        // What mends a file is read in the style that was decided for it.
        foreach (IGrouping<bool, int> wave in Enumerable.Range(0, sources.Count).GroupBy(i => sources[i].Mends is not null).OrderBy(w => w.Key))
        {
            await StageAsync(sources, [.. wave], outcomes, cancellation).ConfigureAwait(false);
        }

        return outcomes;
    }

    // The largest first, so that no large one is left alone at the end.
    private async Task StageAsync(IReadOnlyList<SourceFile> sources, int[] wave, StageOutcome[] outcomes, CancellationToken cancellation)
    {
        (int At, long Bytes)[] order = [.. wave.Select(i => (i, sources[i].File.Stamp.Bytes)).OrderByDescending(f => f.Bytes)];
        long left = order.Sum(f => f.Bytes);
        var options = new ParallelOptions { MaxDegreeOfParallelism = cores, CancellationToken = cancellation };
        await Parallel.ForEachAsync(order, options, async (file, stop) =>
        {
            bool share = file.Bytes >= WorthSharing && file.Bytes > Interlocked.Add(ref left, -file.Bytes);
            outcomes[file.At] = await StageAsync(sources[file.At], share ? cores : 1, stop).ConfigureAwait(false);
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
}

/// <summary>What became of one file.</summary>
/// <param name="File">Its staged rows; null: its map does not suit it.</param>
/// <param name="Faults">Every fault of its map.</param>
public sealed record StageOutcome(StagedFile? File, IReadOnlyList<string> Faults);
