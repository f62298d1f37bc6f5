using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Staging;

namespace PartsSignal.Pipeline.Tests.Staging;

/// <summary>A cell that was read before counts like one that was not.</summary>
public sealed class RepeatedCellsTests
{
    private static readonly SourceMap Jobs = new()
    {
        Files = "jobs.csv",
        Kind = "jobs",
        Columns = new[] { ("job_id", "Job"), ("opened_on", "Opened"), ("outcome", "Result"), ("visits", "Visits"), ("complaint", "Said"), ("customer_name", "Who"), ("part", "Part"), ("description", "Text") }
            .ToDictionary(c => c.Item1, c => (IReadOnlyList<string>)[c.Item2]),
    };

    private const string Header = "Job,Opened,Result,Visits,Said,Who,Part,Text\n";

    [Fact]
    public async Task StageAsync_SameUnusableCells_EachRowRefusedOrTallied()
    {
        using var rig = new StagingRig();
        StagedFile file = await rig.StageAsync(
            "jobs.csv",
            Header
            + "J1,2026-08-03,fixed,many,hums,Ada Ho,A1,Pump\nJ2,31/31/2026,fixed,1,hums,Ada Ho,A1,Pump\nJ3,2026-08-03,fixed,many,hums,Ada Ho,A1,Pump\nJ4,31/31/2026,fixed,1,hums,Ada Ho,A1,Pump\n"
            + "J5,2026-08-03,fixed,many,hums,Ada Ho,8.6E+05,Pump\nJ6,2026-08-03,fixed,2,hums,Ada Ho,8.6E+05,Pump\n",
            Jobs);
        Assert.Equal(["3|opened_on|bad_date", "5|opened_on|bad_date", "6|part|damaged_by_spreadsheet", "7|part|damaged_by_spreadsheet"], StagingRig.Rejects(file));
        Assert.Equal([new UnreadCells("visits", "bad_number", 2, 2)], file.UnreadCells.Where(u => u.Field == "visits"));
        Assert.Equal(["J1|-", "J3|-"], StagingRig.Rows(file, "staged_jobs", "job_id, visits"));
    }

    // The same complaint by two customers, one of whom it names.
    [Fact]
    public async Task StageAsync_SameComplaintOfOthers_EachWithoutItsOwnCustomer()
    {
        using var rig = new StagingRig();
        StagedFile file = await rig.StageAsync(
            "jobs.csv",
            Header
            + "J1,2026-08-03,fixed,1,no fill at the baker,Ben Wu,A1,Pump\nJ2,2026-08-03,fixed,1,no fill at the baker,Ada Baker,A1,Pump\nJ3,2026-08-03,fixed,1,no fill at the baker,Ben Wu,A1,Pump\n",
            Jobs);
        Assert.Equal(
            ["J1|no fill at the baker|no_fill", "J2|no fill at the [name]|no_fill", "J3|no fill at the baker|no_fill"],
            StagingRig.Rows(file, "staged_jobs", "job_id, complaint_text, complaint_kind"));
    }

    // In a short file a name nobody knows stays in a column of words, but not where the row's own customer is called so.
    // One phone makes them one household: two of them would make the word a common one.
    [Theory]
    [InlineData("brand", "brand", "Quibblex", "Quibblex", null)]
    [InlineData("technician", "technician", "Quibblex", "Quibblex", null)]
    [InlineData("appliance_type", "appliance_type", "Quibblex", "quibblex", "other")]
    public async Task StageAsync_SameWordOfOthers_EachByItsOwnCustomer(string field, string column, string cell, string kept, string? cut)
    {
        const string Phone = "0117 496 0463";
        using var rig = new StagingRig();
        SourceMap map = Jobs with { Columns = new Dictionary<string, IReadOnlyList<string>> { ["job_id"] = ["Job"], ["opened_on"] = ["Opened"], [field] = ["Word"], ["customer_name"] = ["Who"], ["phone"] = ["Tel"] } };
        StagedFile file = await rig.StageAsync(
            "jobs.csv", $"Job,Opened,Word,Who,Tel\nJ1,2026-08-03,{cell},Ben Wu,{Phone}\nJ2,2026-08-03,{cell},Ada {cell},{Phone}\nJ3,2026-08-03,{cell},Ben Wu,{Phone}\n", map);
        Assert.Equal([$"J1|{kept}", $"J2|{cut ?? "-"}", $"J3|{kept}"], StagingRig.Rows(file, "staged_jobs", $"job_id, {column}"));
        Assert.Equal([new UnreadCells(field, "personal", 1, 3)], file.UnreadCells);
    }

    [Fact]
    public async Task StageAsync_EmptyThenFilledThenEmpty_AsTheCellsSay()
    {
        using var rig = new StagingRig();
        StagedFile file = await rig.StageAsync(
            "jobs.csv",
            Header + "J1,2026-08-03,fixed,,,,,\nJ2,2026-08-03,,2,no fill,Ada Ho,A-1 O,Drain pump\nJ3,2026-08-03,fixed,,,,,\nJ4,2026-08-03,,2,no fill,Ada Ho,A-1 O,Drain pump\n",
            Jobs);
        Assert.Equal(
            ["J1|-|-|none", "J2|2|no fill|no_fill", "J3|-|-|none", "J4|2|no fill|no_fill"],
            StagingRig.Rows(file, "staged_jobs", "job_id, visits, complaint_text, complaint_kind"));
        Assert.Equal(
            ["J2|A-1 O|A1O|drain_pump", "J4|A-1 O|A1O|drain_pump"],
            StagingRig.Rows(file, "staged_job_parts", "job_id, part_raw, part_key, component"));
    }

    // Rows of ASCII alone are widened at once; cells with doubled quotes or other letters are read each for itself.
    [Fact]
    public async Task StageAsync_QuotedAndForeignCells_AsWritten()
    {
        using var rig = new StagingRig();
        StagedFile file = await rig.StageAsync(
            "jobs.csv",
            Header
            + "J1,2026-08-03,fixed,1,\"hums, \"\"loud\"\" one\",Ada Ho,A1,\"Pump, drain\"\nJ2,2026-08-03,fixed,1,t\u00fcr klemmt,\u017dofie \u00d8re,\u00c41,\"Dichtung, \"\"gro\u00df\"\"\"\nJ3,2026-08-03,fixed,1,,Ada Ho,A3,\" Belt \"\n",
            Jobs);
        Assert.Equal(["hums, \"loud\" one", "t\u00fcr klemmt", "-"], StagingRig.Rows(file, "staged_jobs", "complaint_text"));
        Assert.Equal(["A1|Pump, drain", "\u00c41|Dichtung, \"gro\u00df\"", "A3|Belt"], StagingRig.Rows(file, "staged_job_parts", "part_raw, description"));
    }
}
