using System.Text;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Staging;

namespace PartsSignal.Pipeline.Tests.Staging;

public sealed class TextCasesTests
{
    private static readonly SourceMap Parts = new()
    {
        Files = "parts.csv",
        Kind = "parts",
        Columns = new Dictionary<string, IReadOnlyList<string>>
        {
            ["part"] = ["Part"],
            ["returnable_days"] = ["Days"],
            ["price"] = ["Price"],
        },
    };

    private static readonly SourceMap Jobs = new()
    {
        Files = "jobs.csv",
        Kind = "jobs",
        Columns = new Dictionary<string, IReadOnlyList<string>> { ["job_id"] = ["Job"], ["opened_on"] = ["Opened"], ["complaint"] = ["Fault"], ["technician"] = ["Man"] },
    };

    [Fact]
    public async Task StageAsync_LeadingZeros_TwoPartsTextForText()
    {
        using var rig = new StagingRig();
        StagedFile file = await rig.StageAsync("parts.csv", "Part,Days,Price\n00860001,30,1\n60001,30,1\n860001,30,1\n", Parts);
        Assert.Equal(["00860001|00860001", "60001|60001", "860001|860001"], StagingRig.Rows(file, "staged_parts", "part_raw, part_key"));
    }

    [Fact]
    public async Task StageAsync_InchMarkInBareCell_QuoteKept()
    {
        using var rig = new StagingRig();
        StagedFile file = await rig.StageAsync("parts.csv", "Part,Days,Price\nHOSE-26\"-K,7,4.20\n", Parts);
        Assert.Equal(["HOSE-26\"-K|7|4.20"], StagingRig.Rows(file, "staged_parts", "part_raw, returnable_days, price"));
    }

    [Fact]
    public async Task StageAsync_LastRowBroken_ExactlyOneReject()
    {
        using var rig = new StagingRig();
        StagedFile file = await rig.StageAsync("parts.csv", "Part;Days;Price\nA1;7;9,50\nXXX;\"9;10,9", Parts);
        Assert.Equal(["3|-|open_quote"], StagingRig.Rejects(file));
        Assert.Equal(["A1|9.50"], StagingRig.Rows(file, "staged_parts", "part_raw, price"));
        Assert.Equal(2, file.RowsRead);
    }

    [Fact]
    public async Task StageAsync_QuoteOpenedInOneRowAndClosedInALaterOne_NoRowBetweenIsLost()
    {
        using var rig = new StagingRig();
        StagedFile file = await rig.StageAsync("parts.csv", "Part,Days,Price\nA1,7,1\nA2,\"7,1\nA3,7,1\nA4,7\",1\nA5,7,1\n", Parts);
        Assert.Equal(5, file.RowsRead);
        Assert.Equal(["A1|7", "A3|7", "A4|-", "A5|7"], StagingRig.Rows(file, "staged_parts", "part_raw, returnable_days"));
        Assert.Equal(["3|-|open_quote"], StagingRig.Rejects(file));
        Assert.Equal([new UnreadCells("returnable_days", "bad_number", 1, 5)], file.UnreadCells);
    }

    [Theory]
    [InlineData("")]
    [InlineData("A0,7,spare\nA1,7,spare\n")]
    public async Task StageAsync_QuotedTextWithAsManySeparatorsAsARow_StaysOneRow(string before)
    {
        using var rig = new StagingRig();
        StagedFile file = await rig.StageAsync("parts.csv", "Part,Days,Price,Text\n" + before.Replace("spare", "4.20,spare", StringComparison.Ordinal) + "A2,7,4.20,\"fits b c\nbut not d, e, f, g\"\n", Parts);
        Assert.Equal(0, file.Rejected);
        Assert.Contains("A2|7", StagingRig.Rows(file, "staged_parts", "part_raw, returnable_days"));
    }

    [Fact]
    public async Task StageAsync_LineEndsWithinQuotes_OneRow()
    {
        using var rig = new StagingRig();
        StagedFile file = await rig.StageAsync("jobs.csv", "Job,Opened,Fault,Man\r\nJ1,2026-08-03,\"leaks\r\nfrom the door\",Ada\r\nJ2,2026-08-04,hums,Ada\r\n", Jobs);
        Assert.Equal(["J1|leaks\r\nfrom the door|2", "J2|hums|4"], StagingRig.Rows(file, "staged_jobs", "job_id, complaint_text, source_line"));
    }

    [Theory]
    [InlineData("windows-1252")]
    [InlineData("iso-8859-1")]
    [InlineData("utf-8")]
    [InlineData("utf-16")]
    public async Task StageAsync_AnyEncodingWithoutBeingTold_SameText(string encoding)
    {
        Encoding.RegisterProvider(CodePagesEncodingProvider.Instance);
        using var rig = new StagingRig();
        rig.Write("jobs.csv", Encoding.GetEncoding(encoding).GetBytes("Job,Opened,Fault,Man\nJ1,2026-08-03,cost £12.50,Küpper\n"));
        StagedFile file = (await rig.StageAllAsync(new ShopSettings { Sources = [Jobs] })).Single();
        Assert.Equal(["cost £12.50|Küpper"], StagingRig.Rows(file, "staged_jobs", "complaint_text, technician"));
    }

    [Fact]
    public async Task StageAsync_Windows1252ByteFarDownTheFile_StillTheSameText()
    {
        Encoding.RegisterProvider(CodePagesEncodingProvider.Instance);
        using var rig = new StagingRig();
        var text = new StringBuilder("Job,Opened,Fault,Man\n");
        for (int i = 0; i < 20_000; i++)
        {
            text.Append($"J{i},2026-08-03,does not heat,Ada\n");
        }

        rig.Write("jobs.csv", Encoding.GetEncoding(1252).GetBytes(text.Append(string.Concat(Enumerable.Range(0, 5).Select(i => $"K{i},2026-08-03,hums,Küpper\n"))).ToString()));
        StagedFile file = (await rig.StageAllAsync(new ShopSettings { Sources = [Jobs] })).Single();
        Assert.Equal("Küpper", StagingRig.Rows(file, "staged_jobs", "technician")[^1]);
    }

    [Fact]
    public async Task StageAsync_RaggedRows_RejectsAndTheBooksBalance()
    {
        using var rig = new StagingRig();
        StagedFile file = await rig.StageAsync("parts.csv", "Part,Days,Price\nA1,7,1\nA2,7,1,x,y\nA3,7\nA4,7,1,,\n", Parts);
        Assert.Equal(["3|-|too_many_cells", "4|-|too_few_cells", "5|-|too_many_cells"], StagingRig.Rejects(file));
        Assert.Equal(["A1"], StagingRig.Rows(file, "staged_parts", "part_raw"));
        Assert.Equal(4, file.RowsRead);
    }

    [Fact]
    public async Task StageAsync_DecimalCommaUnderSemicolon_AmountRead()
    {
        using var rig = new StagingRig();
        StagedFile file = await rig.StageAsync("parts.csv", "Part;Days;Price\nA1;7;1.234,50\nA2;7;2.000\n", Parts);
        Assert.Equal(["A1|1234.50", "A2|2000.00"], StagingRig.Rows(file, "staged_parts", "part_raw, price"));
    }

    [Fact]
    public async Task StageAsync_NotesAboveAndBelow_RowsLoadFootersCounted()
    {
        using var rig = new StagingRig();
        StagedFile file = await rig.StageAsync(
            "parts.csv",
            "Price list of spring\nall prices \"net\n\nPart,Days,Price\nA1,7,1\nA2,7,2\nPrices may change\nAsk for discounts, always\nThank you\nTotal,,3\n",
            Parts);
        Assert.Equal(["A1", "A2"], StagingRig.Rows(file, "staged_parts", "part_raw"));
        Assert.Equal(file.RowsRead, 2 + file.Rejected);
        Assert.Equal(4, file.Rejected + file.Footers);
    }

    [Theory]
    [InlineData("03/08/2026,04/08/2026,26/08/2026", "2026-08-03,2026-08-04,2026-08-26", 0)]
    [InlineData("03/08/2026,04/08/2026,08/26/2026", "2026-03-08,2026-04-08,2026-08-26", 0)]
    [InlineData("03/08/2026,04/08/2026,05/08/2026", "2026-08-03,2026-08-04,2026-08-05", 1)]
    public async Task StageAsync_DayOrMonthFirst_OneOrderForTheFile(string written, string read, int remarks)
    {
        using var rig = new StagingRig();
        string rows = string.Join('\n', written.Split(',').Select((d, i) => $"J{i},{d},hums,Ada"));
        StagedFile file = await rig.StageAsync("jobs.csv", "Job,Opened,Fault,Man\n" + rows + "\n", Jobs);
        Assert.Equal(read.Split(','), StagingRig.Rows(file, "staged_jobs", "opened_on"));
        Assert.Equal(remarks, file.Remarks.Count);
    }

    [Fact]
    public async Task StageAsync_CapitalMonthIsACodeAndAWrittenMonthIsDamage_ToldApart()
    {
        using var rig = new StagingRig();
        StagedFile file = await rig.StageAsync("parts.csv", "Part,Days,Price\nMAR-01,7,1\n1E10,7,1\n01-Mar,7,1\nMar-01,7,1\n1.00E+10,7,1\n", Parts);
        Assert.Equal(["MAR-01", "1E10"], StagingRig.Rows(file, "staged_parts", "part_raw"));
        Assert.Equal(3, file.Rejected);
    }

    [Fact]
    public async Task StageAsync_TwoBooksWithTheSameNumbers_PrefixesKeepThemApart()
    {
        using var rig = new StagingRig();
        rig.Write("a.csv", "Job,Opened,Fault,Man\n1,2026-08-03,hums,Ada\n");
        rig.Write("b.csv", "Job,Opened,Fault,Man\n1,2026-08-03,hums,Ada\n");
        IReadOnlyList<StagedFile> files = await rig.StageAllAsync(new ShopSettings
        {
            Sources = [Jobs with { Files = "a.csv", JobPrefix = "A-" }, Jobs with { Files = "b.csv", JobPrefix = "B-" }],
        });
        Assert.Equal(["A-1", "B-1"], files.SelectMany(f => StagingRig.Rows(f, "staged_jobs", "job_id")));
        Assert.NotEqual(StagingRig.Rows(files[0], "staged_jobs", "row_hash"), StagingRig.Rows(files[1], "staged_jobs", "row_hash"));
    }

    [Fact]
    public async Task StageAsync_OneLogUnderTwoNames_RowsHaveTheSameHash()
    {
        using var rig = new StagingRig();
        rig.Write("a.csv", "Job,Opened,Fault,Man\n1,2026-08-03,hums,Ada\n");
        rig.Write("b.csv", "Job,Opened,Fault,Man\n\n1,2026-08-03,hums,Ada\n");
        IReadOnlyList<StagedFile> files = await rig.StageAllAsync(new ShopSettings { Sources = [Jobs with { Files = "?.csv" }] });
        Assert.Equal(StagingRig.Rows(files[0], "staged_jobs", "row_hash"), StagingRig.Rows(files[1], "staged_jobs", "row_hash"));
    }
}
