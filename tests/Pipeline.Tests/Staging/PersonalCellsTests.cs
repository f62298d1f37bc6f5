using System.Text;
using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Staging;

namespace PartsSignal.Pipeline.Tests.Staging;

/// <summary>What people type into columns that are not for it.</summary>
public sealed class PersonalCellsTests
{
    private static readonly SourceMap Jobs = new()
    {
        Files = "jobs.csv",
        Kind = "jobs",
        Columns = new[] { ("job_id", "Job"), ("opened_on", "Opened"), ("technician", "Man"), ("brand", "Make"), ("model", "Model"), ("complaint", "Said"), ("customer_name", "Who"), ("error_code", "Code") }
            .ToDictionary(c => c.Item1, c => (IReadOnlyList<string>)[c.Item2]),
    };

    [Theory]
    [InlineData("J1", "Brunhilde", "Velquora", "WX1", "E20", "J1|-|Velquora|WX1|E20")]
    [InlineData("J1", "Marius", "Kettleby", "WX1", "E20", "J1|Marius|-|WX1|E20")]
    [InlineData("J1", "Marius", "Velquor", "WX1", "E20", "J1|Marius|Velquor|WX1|E20")]
    [InlineData("J1", "Marius", "Velquora", "WX1 Mrs Kettleby 0117 496 0463", "E20", "J1|Marius|Velquora|WX1|E20")]
    [InlineData("J1", "Marius", "Velquora", "0117 496 0463", "E20", "J1|Marius|Velquora|-|E20")]
    [InlineData("J1", "Marius", "Velquora", "WX1", "ring 0117 496 0463", "J1|Marius|Velquora|WX1|-")]
    public async Task StageAsync_OneOddRowAmongMany_KeepsCodesAndKnownValues(string job, string man, string make, string model, string code, string expected)
    {
        using var rig = new StagingRig();
        var text = new StringBuilder("Job,Opened,Man,Make,Model,Said,Who,Code\n").Append($"{job},2026-08-03,{man},{make},{model},no fill,Ada Ho,{code}\n");
        for (int i = 0; i < 300; i++)
        {
            text.Append($"K{i},2026-08-03,{(i % 2 == 0 ? "Marius" : "Tilly")},{(i % 3 == 0 ? "Velquora" : "Ombrelin")},WX{i % 9},no fill,Customer {(char)('A' + (i % 26))}x,E20\n");
        }

        StagedFile file = await rig.StageAsync("jobs.csv", text.ToString(), Jobs);
        Assert.Equal(expected, StagingRig.Rows(file, "staged_jobs", "job_id, technician, brand, model_raw, error_code")[0]);
        Assert.Equal(expected.Contains("Velquor|", StringComparison.Ordinal), file.UnreadCells.All(u => u.Code != "personal"));
    }

    [Fact]
    public async Task StageAsync_JobNumberWithAName_TheSameIdentifierInEveryFile()
    {
        using var rig = new StagingRig();
        StagedFile jobs = await rig.StageAsync("jobs.csv", "Job,Opened,Man,Make,Model,Said,Who,Code\nKettleby 12,2026-08-03,,,,no fill,,\n", Jobs);
        string id = StagingRig.Rows(jobs, "staged_jobs", "job_id").Single();
        StagedFile parts = await rig.StageAsync("lines.csv", "Job,Part\nKettleby 12,A1\n", new() { Files = "lines.csv", Kind = "job_parts", Columns = new Dictionary<string, IReadOnlyList<string>> { ["job_id"] = ["Job"], ["part"] = ["Part"] } });
        Assert.StartsWith("id-", id, StringComparison.Ordinal);
        Assert.Equal(id, StagingRig.Rows(parts, "staged_job_parts", "job_id").Single());
    }

    [Fact]
    public async Task StageAsync_WordOfFiveCustomers_StaysOthersGo()
    {
        using var rig = new StagingRig();
        string rows = string.Concat(Enumerable.Range(0, 5).Select(i => $"J{i},2026-08-03,,,,frobnicator hums,Cust{(char)('a' + i)}x,\n"));
        string same = string.Concat(Enumerable.Range(0, 5).Select(i => $"K{i},2026-08-03,,,,quandifex hums,Ada Ho,\n"));
        StagedFile file = await rig.StageAsync("jobs.csv", "Job,Opened,Man,Make,Model,Said,Who,Code\n" + rows + same, Jobs);
        Assert.Equal(["frobnicator hums", "[...] hums"], StagingRig.Rows(file, "staged_jobs", "complaint_text").Distinct());
    }

    [Fact]
    public async Task StageAsync_TechniciansByInitials_NoNames()
    {
        using var rig = new StagingRig();
        rig.Write("jobs.csv", "Job,Opened,Man,Make,Model,Said,Who,Code\nJ1,2026-08-03,Marius,,,no fill,,\nJ2,2026-08-03,Jonna van Rook,,,no fill,,\nJ3,2026-08-03,,,,no fill,,\n");
        StagedFile file = (await rig.StageAllAsync(new() { Technicians = "initials", Sources = [Jobs] })).Single();
        Assert.Equal(["MA", "JVR", "-"], StagingRig.Rows(file, "staged_jobs", "technician"));
    }
}
