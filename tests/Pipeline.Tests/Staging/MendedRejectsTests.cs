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
    public async Task StageAllAsync_MendedRowStillBad_ComesBackUnderANameThatCanBeMendedAgain()
    {
        using var rig = new StagingRig();
        var settings = new ShopSettings { Sources = [Parts] };
        rig.Write("list.txt", "Part;Text;Price\nA1;Pump;1.234,50\nA2;=Belt;cheap\nA3;Hose;dear\nA4;Lid;free\n");
        IReadOnlyList<StagedFile> staged = await rig.StageAllAsync(settings);
        (string Bad, string Good)[] mendings = [("A2,'=Belt,cheap,", "A2,'=Belt,\"2,00\","), ("A3,Hose,dear,", "A3,Hose,\"1.003,00\","), ("A4,Lid,free,", "A4,Lid,\"4,00\",")];
        for (int round = 0; round < mendings.Length; round++)
        {
            string refused = staged[^1].RawRejects!;
            string[] lines = File.ReadAllLines(refused);
            Assert.Equal("Part,Text,Price,reject_line,reject_field,reject_reason,reject_message,reject_suggestion,reject_raw", lines[0]);
            Assert.Equal(mendings.Length - round, lines.Length - 1);
            rig.Write($"mended/{Path.GetFileName(refused)}", File.ReadAllText(refused).Replace("\n" + mendings[round].Bad, "\n" + mendings[round].Good, StringComparison.Ordinal));
            staged = await rig.StageAllAsync(settings);
            Assert.Equal(round + 2, staged.Count);
            Assert.Equal(staged.Count, staged.Select(f => f.SourceOrder).Distinct().Count());
        }

        Assert.Equal(
            ["A1|Pump|1234.50", "A2|=Belt|2.00", "A3|Hose|1003.00", "A4|Lid|4.00"],
            staged.SelectMany(f => StagingRig.Rows(f, "staged_parts", "part_raw, description, price")));
        Assert.Equal(0, staged[^1].Rejected);
    }

    [Fact]
    public async Task StageAsync_DayThatIsNone_MessageNamesPlaceAndCauseWithoutTheCell()
    {
        using var rig = new StagingRig();
        StagedFile file = await rig.StageAsync("counts.csv", "Van,Part,On hand,Date in\n1,A1,2,31.02.2024\n1,A2,two,13.02.2024\n", new SourceMap
        {
            Files = "counts.csv",
            Kind = "van_counts",
            Columns = new Dictionary<string, IReadOnlyList<string>> { ["van"] = ["Van"], ["part"] = ["Part"], ["on_hand"] = ["On hand"], ["counted_on"] = ["Date in"] },
        });
        Assert.Equal(
            ["Column 4 (Date in): the calendar has no such day.|Type the date as 2026-08-03.", "Column 3 (On hand): this is not a whole number.|Type a whole number."],
            StagingRig.Messages(file));
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
