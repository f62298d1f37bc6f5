using System.Text.Json.Nodes;
using PartsSignal.Analysis.Sql;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Publishing;
using PartsSignal.Pipeline.Review;
using PartsSignal.Pipeline.Running;

namespace PartsSignal.Pipeline.Tests.Transform;

public sealed class ShopLoadTests(TwoJobsShop loaded) : IClassFixture<TwoJobsShop>, IDisposable
{
    private readonly SmallShop _shop = loaded.Copy();

    public void Dispose() => _shop.Dispose();

    [Fact]
    public async Task Load_Twice_GivesTheSameRowsAndKeepsTwoStores()
    {
        string first = StoreSwap.Resolve(_shop.Output.Store);
        IReadOnlyList<string> before = Jobs();
        await _shop.Load();
        Assert.Equal(before, Jobs());
        Assert.NotEqual(first, StoreSwap.Resolve(_shop.Output.Store));
        await _shop.Load();
        Assert.Equal(2, Directory.GetDirectories(Path.Combine(_shop.Output.Root, "stores")).Length);
    }

    [Fact]
    public async Task Load_AnsweredReview_LoadsWhatWasOpen()
    {
        Assert.Equal(["J1|-|unresolved|-|other|several date codes", "J2|AB-200|exact|inlet_valve|no_fill|date code"], Jobs());
        _shop.Answer((ReviewNames.PartNumbers, "AB-210", "AB-200"), (ReviewNames.Complaints, "it sulks", "noise"), (ReviewNames.Serials, "J1", "2016"));
        await _shop.Load();
        Assert.Equal(["J1|AB-200|alias|inlet_valve|noise|date code", "J2|AB-200|exact|inlet_valve|no_fill|date code"], Jobs());
        string kept = File.ReadAllText(Path.Combine(_shop.Output.Review, ReviewNames.PartNumbers));
        Assert.Contains("AB-210", kept, StringComparison.Ordinal);
        Assert.Contains(",AB-200", kept, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Load_MissingFile_LeavesTheLastStore()
    {
        IReadOnlyList<string> before = Jobs();
        File.Delete(Path.Combine(_shop.Input, "jobs.csv"));
        await Assert.ThrowsAsync<BadInputException>(_shop.Load);
        Assert.Equal(before, Jobs());
    }

    [Fact]
    public async Task Load_KeepIntermediate_LeavesAFileThatAnyClientOpens()
    {
        await ShopLoad.RunAsync(_shop.Input, _shop.Output, ShopFile.Load(_shop.Input), TimeProvider.System, null, TestContext.Current.CancellationToken, keepIntermediate: true);
        using var database = Database.Open(new DatabaseOptions { File = _shop.Output.Intermediate, Threads = 1 });
        Assert.Equal(2, database.Count("int_job_units"));
        Assert.Equal(2, database.Count("jobs"));
        Assert.All(SqlModels.In("intermediate").Where(m => m.Reads.Any(t => t.StartsWith("staged_", StringComparison.Ordinal))), m => Assert.True(database.Has(m.Table), m.Table));
    }

    [Fact]
    public void Load_NotAskedToKeepIntermediate_LeavesNone() => Assert.False(File.Exists(loaded.Output.Intermediate));

    [Fact]
    public async Task Load_LinesThatAreNotData_AreCountedPerFileAndInAll()
    {
        _shop.Write("prices.csv", "Number,Text\nAB-200,Inlet valve\nNumber,Text\nAB-300,Door lock\n");
        JsonObject record = RunRecord.Empty();
        LoadStep.Record(await _shop.Load(), record);
        Assert.Equal(["prices.csv 2 1", "jobs.csv 2 0"], record["files"]!.AsArray().Select(f => $"{f!["file"]} {f["read"]} {f["not_data"]}"));
        Assert.Equal(1, (long)record["rows"]!["not_data"]!);
    }

    private IReadOnlyList<string> Jobs() => [.. _shop
        .Rows("from jobs join job_parts using (job_id) select job_id, part_number, part_basis, main_component, complaint_kind, age_basis order by job_id")
        .Select(r => r.Replace("|other_part|", "|-|", StringComparison.Ordinal))];
}

/// <summary>A shop of two jobs with something to answer, loaded once.</summary>
public sealed class TwoJobsShop : SharedShop
{
    internal override void Write(SmallShop shop)
    {
        shop.Write("shop.json", """
            {"sources": [
              {"files": "prices.csv", "kind": "parts", "columns": {"part": "Number", "description": "Text"}},
              {"files": "jobs.csv", "kind": "jobs", "dateOrder": "ymd",
               "columns": {"job_id": "Job", "opened_on": "In", "closed_on": "Out", "brand": "Make", "serial": "Serial", "complaint": "Says", "outcome": "Result"},
               "partGroups": [{"part": "Part", "quantity": "Qty"}],
               "words": {"outcome": {"done": "fixed_with_part"}}}]}
            """);
        shop.Write("prices.csv", "Number,Text\nAB-200,Inlet valve\nAB-300,Door lock\n");
        shop.Write("serial-codes.csv", "brand,pattern,year_letters,year_of_first,cycle_years,month_letters\nOrvane,^(?<year>[A-J])(?<month>[0-9]{2}),ABCDEFGHIJ,2000,10,\n");
        shop.Write("jobs.csv", "Job,In,Out,Make,Serial,Says,Result,Part,Qty\nJ1,2024-03-04,2024-03-05,Orvane,G0412345,it sulks,done,AB-210,1\nJ2,2008-03-04,2008-03-05,Orvane,G0412399,does not fill,done,AB-200,1\n");
    }
}
