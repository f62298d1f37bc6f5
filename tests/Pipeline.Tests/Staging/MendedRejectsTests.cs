using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Rejects;
using PartsSignal.Pipeline.Staging;

namespace PartsSignal.Pipeline.Tests.Staging;

public sealed class MendedRejectsTests
{
    private static readonly SourceMap Parts = new()
    {
        Files = "list.txt",
        Kind = "parts",
        Columns = new Dictionary<string, IReadOnlyList<string>> { ["part"] = ["Part"], ["description"] = ["Text"], ["price"] = ["Price"] },
    };

    [Fact]
    public async Task StageAllAsync_RejectsMendedAndDroppedBackIn_LoadWithTheStyleOfTheirSource()
    {
        using var rig = new StagingRig();
        var settings = new ShopSettings { Sources = [Parts] };
        rig.Write("list.txt", "Part;Text;Price\nA1;Pump;1.234,50\nA2;=Belt;cheap\nA3;\"Hose;9,00\n");
        StagedFile first = (await rig.StageAllAsync(settings)).Single();
        Assert.Equal(["3|price|bad_number", "4|-|open_quote"], StagingRig.Rejects(first));

        string mended = File.ReadAllText(first.RawRejects!).Replace("A2,'=Belt,cheap,", "A2,'=Belt,\"2,000\",", StringComparison.Ordinal);
        Assert.Contains("'=Belt", mended, StringComparison.Ordinal);
        rig.Write($"mended/{RejectFile.NameOf("list.txt")}", mended);
        IReadOnlyList<StagedFile> both = await rig.StageAllAsync(settings);
        Assert.Equal(2, both.Count);
        Assert.Equal(["A2|=Belt|2.00", "A3|Hose|9.00"], StagingRig.Rows(both[1], "staged_parts", "part_raw, description, price"));
        Assert.Equal(0, both[1].Rejected);
    }

    [Fact]
    public async Task StageAsync_NoRejectsAnyMore_FileForMendingGone()
    {
        using var rig = new StagingRig();
        StagedFile bad = await rig.StageAsync("list.txt", "Part;Text;Price\nA2;Belt;cheap\n", Parts);
        Assert.True(File.Exists(bad.RawRejects));
        await rig.StageAsync("list.txt", "Part;Text;Price\nA2;Belt;2\n", Parts);
        Assert.False(File.Exists(bad.RawRejects));
    }
}
