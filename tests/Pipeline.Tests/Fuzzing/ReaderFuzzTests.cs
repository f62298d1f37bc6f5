using Parquet;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Staging;
using PartsSignal.Pipeline.Tests.Staging;
using PartsSignal.Pipeline.Understanding;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Tests.Fuzzing;

/// <summary>
/// Damaged files, the same in every run: each is read to its end or refused with a reason, never anything else. In the
/// slow group each, else every tenth, is inspected and staged as well, and its rows add up.
/// </summary>
public sealed class ReaderFuzzTests
{
    private const long MostMemory = 400L << 20;
    private const int MostFailures = 200;

    private static readonly ReadingLimits Limits = new()
    {
        MaxRowBytes = 10_000,
        MaxColumns = 500,
        MaxUnpackedBytes = 8 << 20,
        MaxUnpackRatio = 50,
        MaxEntries = 100,
        MaxWorkbookBytes = 8 << 20,
    };

    private static readonly Inspector Inspector = new(Limits, WordSets.Load(null));

    [Fact]
    public Task Read_FiveHundredDamagedFiles_ReadOrRefused() => RunAsync(first: 0, count: 500, stagedEvery: 10);

    [LongFact]
    public Task Read_FiveHundredMoreDamagedFiles_ReadOrRefused() => RunAsync(first: 500, count: 500, stagedEvery: 10);

    [SlowFact]
    public Task Read_AHundredThousandDamagedFiles_ReadOrRefused() => RunAsync(first: 1_000, count: 100_000, stagedEvery: 1);

    private static async Task RunAsync(int first, int count, int stagedEvery)
    {
        using var rig = new StagingRig();
        var failed = new List<string>();
        for (int i = first; i < first + count; i++)
        {
            var random = new Random(i);
            FuzzSeed seed = FuzzSeed.All[random.Next(FuzzSeed.All.Count)];
            rig.Write(seed.Name, Mutator.Damage(seed.Bytes, random));
            try
            {
                Read(rig, seed);
                if (i % stagedEvery == 0)
                {
                    await StageAsync(rig, seed);
                }
            }
            catch (Exception bad) when (failed.Count < MostFailures)
            {
                failed.Add($"input {i}, made of {seed.Name}: {bad}");
            }

            File.Delete(Path.Combine(rig.Input, seed.Name));
        }

        Assert.True(failed.Count == 0, string.Join('\n', failed));
        Assert.True(GC.GetTotalMemory(forceFullCollection: true) < MostMemory);
    }

    private static void Read(StagingRig rig, FuzzSeed seed)
    {
        foreach (InputFile file in new InputFiles(rig.Input, Limits).Find(seed.Map.Files))
        {
            try
            {
                var scan = ContentScan.Read(file, Limits, CancellationToken.None);

                using OpenedTable table = OpenedTable.Open(file, scan, seed.Map, Limits);
                long rows = 0;
                while (table.Reader.Read())
                {
                    rows++;
                    Assert.True(rows <= Math.Max(scan.Bytes + 1, 1 << 20), "more rows than bytes: it does not end");
                    Assert.True(table.Reader.Fault is not null || table.Reader.Row.Count <= Math.Max(Limits.MaxColumns, 1 << 14));
                }
            }
            catch (BadInputException refused)
            {
                Assert.NotEmpty(refused.Faults);
            }
        }
    }

    private static async Task StageAsync(StagingRig rig, FuzzSeed seed)
    {
        var settings = new ShopSettings { Sources = [seed.Map], Limits = Limits };
        try
        {
            foreach (InputFile file in new InputFiles(rig.Input, Limits).Find(seed.Map.Files))
            {
                Inspector.Inspect(file, CancellationToken.None);
            }

            foreach (StagedFile file in await rig.StageAllAsync(settings))
            {
                Assert.Equal(file.RowsRead, file.Rejected + await RowsOfAsync(file));
            }
        }
        catch (BadInputException refused)
        {
            Assert.NotEmpty(refused.Faults);
        }
    }

    private static async Task<long> RowsOfAsync(StagedFile file)
    {
        if (!file.Tables.TryGetValue("staged_" + file.Kind, out string? path))
        {
            return 0;
        }

        await using ParquetReader reader = await ParquetReader.CreateAsync(path);
        return reader.Metadata!.NumRows;
    }
}
