using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Staging;
using PartsSignal.Pipeline.Understanding;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Tests.Staging;

/// <summary>Files that nobody here wrote, through inspect and stage without an edit.</summary>
public sealed class RealFilesTests
{
    [Theory]
    [InlineData("open-repair-2022.csv", 23_940, 0)]
    [InlineData("open-repair-2019-older-header.csv", 12_633, 1)]
    [InlineData("excavator-work-orders.csv", 5_485, 0)]
    public async Task StageAsync_AsInspectProposes_EveryRowAccountedFor(string name, int rows, int rejected)
    {
        Assert.SkipWhen(RepositoryFolder.RealFiles is null, "the files are not here");
        using var rig = new StagingRig();
        rig.Write(name, File.ReadAllBytes(Path.Combine(RepositoryFolder.RealFiles!, name)));
        SourceMap? map = new Inspector(new ReadingLimits(), WordSets.Load(null)).Inspect(new InputFiles(rig.Input, new ReadingLimits()).All.Single(), CancellationToken.None).Map;
        ShopSettings settings = ShopFile.Parse(ShopFileWriter.With(null, [map!]));
        StagedFile file = (await rig.StageAllAsync(settings)).Single();
        Assert.Equal(rows, file.RowsRead);
        Assert.Equal(rejected, file.Rejected);
        Assert.Equal(rows - rejected, StagingRig.Rows(file, "staged_jobs", "source_line").Count);
    }
}
