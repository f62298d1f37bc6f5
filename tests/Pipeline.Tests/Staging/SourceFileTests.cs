using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Staging;

namespace PartsSignal.Pipeline.Tests.Staging;

public sealed class SourceFileTests
{
    [Fact]
    public void Find_MoreFilesThanPositions_RefusedAndNotLeftOut()
    {
        using var rig = new StagingRig();
        for (int i = 0; i <= SourceFile.MostFilesPerMap; i++)
        {
            rig.Write($"log{i}.csv", [(byte)'a']);
        }

        var fault = Assert.Throws<BadInputException>(() => SourceFile.Find(rig.Input, new ShopSettings { Sources = [new SourceMap { Files = "log*.csv", Kind = "jobs", Columns = new Dictionary<string, IReadOnlyList<string>>() }] }));
        Assert.Equal(["shop.json: sources[0].files: 'log*.csv' names 5001 files; the limit is 5000. Use several patterns, one a folder or a year."], fault.Faults);
    }
}
