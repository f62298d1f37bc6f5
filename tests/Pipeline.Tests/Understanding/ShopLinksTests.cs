using System.Text;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Tests.Transform;
using PartsSignal.Pipeline.Understanding;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Tests.Understanding;

/// <summary>The tables of a shop explain each other, and a load heeds it.</summary>
public sealed class ShopLinksTests : IDisposable
{
    private static readonly string[] Complaints = ["does not drain", "no heat", "leaks from the door", "makes a loud noise", "will not start", "does not spin"];
    private readonly SmallShop _shop = new();

    public void Dispose() => _shop.Dispose();

    [Fact]
    public async Task Load_CodesWithLists_GivesTheWords()
    {
        _shop.Write("jobs.csv", Jobs(i => $"{i},{Day(i)},{Day(i + 2)},{1 + (i % 4)},Orvane,QD {i % 30},R{10 + (i % 6)},D{1 + (i % 4)},PX-{100 + (i % 25)}", "Job No,Opened,Closed,Tech ID,Brand,Model,Reason Code,Result Code,Part Number"))
            .Write("technicians.csv", "Tech ID,Name\n1,Ada Winslow\n2,Ben Harrow\n3,Cleo Marsh\n4,Dan Pike\n")
            .Write("reasons.csv", "Reason Code,Complaint\n" + string.Concat(Complaints.Select((c, i) => $"R{10 + i},{c}\n")))
            .Write("results.csv", "Result Code,Result\nD1,repaired with part\nD2,no fault found\nD3,declined\nD4,part ordered\n");
        await LoadProposed();
        Assert.Equal(["Ada Winslow", "Ben Harrow", "Cleo Marsh", "Dan Pike"], _shop.Rows("from jobs select distinct technician order by 1"));
        Assert.Equal(["6"], _shop.Rows("from jobs select count(distinct complaint_text)"));
        Assert.Equal(["declined", "fixed_with_part", "no_fault_found", "part_ordered"], _shop.Rows("from jobs select distinct outcome order by 1"));
    }

    [Fact]
    public async Task Load_PartLinesOfBills_CountForTheJobOfTheBill()
    {
        _shop.Write("jobs.csv", Jobs(i => $"{5_000_000 + (3 * i)},24-{31_000 + i},{Day(i)},{Day(i + 2)},Orvane,QD {i % 30},no heat,40", "Call Key,Call No,Opened,Closed,Brand,Model,Complaint,Stat"))
            .Write("bills.csv", "Bill Id,Doc,Call Key,Total\n" + string.Concat(Enumerable.Range(1, 80).Select(i => $"{910_000 + (7 * i)},I{200_400 + i},{5_000_000 + (3 * i)},{i % 9}1.50\n")))
            .Write("lines.csv", "Line Id,Bill Id,Line,Item,Description,Qty,Price\n" + string.Concat(Enumerable.Range(1, 80).Select(i => $"{880_000 + i},{910_000 + (7 * i)},1,{40_100 + (i % 20 * 7)},drain pump,1,{20 + (i % 20)}.50\n")))
            .Write("items.csv", "Item,Description,Price\n" + string.Concat(Enumerable.Range(0, 20).Select(i => $"{40_100 + (i * 7)},drain pump,{20 + i}.50\n")))
            .Write("codes.csv", "Tbl,Code,Meaning\nStat,10,open\nStat,20,part ordered\nStat,40,complete\nProd,12,washer\nProd,14,dryer\n");
        await LoadProposed();
        Assert.Equal(["80"], _shop.Rows("from job_parts join jobs using (job_id) select count(distinct job_id)"));
    }

    [Fact]
    public async Task Load_MachinesByTheirNumber_GivesSerialModelAndType()
    {
        WriteMachines();
        await LoadProposed();
        Assert.Equal(["12|2|60"], _shop.Rows("from jobs select count(distinct model_raw), count(distinct appliance_type), count(distinct unit_id)"));
    }

    [Fact]
    public async Task Inspect_MachinesByTheirNumber_ClaimsTheColumnForTheMachineAlone()
    {
        WriteMachines();
        SourceMap map = Inspect().Tables.Single(t => t.File == "jobs.csv").Map!;
        Assert.Equal(["Machine ID"], map.Columns["serial"]);
        Assert.DoesNotContain(map.Columns, c => c.Key != "serial" && c.Value.Contains("Machine ID"));
        Assert.Equal(new CodeList("machines.csv", null, "Machine ID", "Model", "Machine ID"), map.Lists["model"]);

        File.WriteAllText(Path.Combine(_shop.Input, "shop.json"), ShopFileWriter.With(null, [map]));
        Assert.Equal(map.Lists["model"], ShopFile.Load(_shop.Input).Sources.Single().Lists["model"]);
        await _shop.Load();
        Assert.Equal(["12|2|60"], _shop.Rows("from jobs select count(distinct model_raw), count(distinct appliance_type), count(distinct unit_id)"));
    }

    [Fact]
    public async Task Load_MapOfAnEarlierVersion_StillLooksTheModelUp()
    {
        WriteMachines();
        _shop.Write("shop.json", """
            {"sources": [{"files": "jobs.csv", "kind": "jobs", "columns": {"job_id": "Job No", "opened_on": "Opened", "model": "Machine ID"},
              "lists": {"model": {"file": "machines.csv", "code": "Machine ID", "meaning": "Model"}}}]}
            """);
        await _shop.Load();
        Assert.Equal(["12|QD 0"], _shop.Rows("from jobs select count(distinct model_raw), min(model_raw)"));
    }

    [Fact]
    public void Load_FieldFromAColumnAndByAKey_IsAFault()
    {
        WriteMachines();
        _shop.Write("shop.json", """
            {"sources": [{"files": "jobs.csv", "kind": "jobs", "columns": {"opened_on": "Opened", "model": "Machine ID"},
              "lists": {"model": {"file": "machines.csv", "code": "Machine ID", "meaning": "Model", "column": "Machine ID"}}}]}
            """);
        var fault = Assert.ThrowsAny<PartsSignal.Pipeline.Core.BadInputException>(() => ShopFile.Load(_shop.Input));
        Assert.Contains("gives model by another column, but columns names one for it too", fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void With_AnswerThatNamesTheColumn_EndsTheLookUp()
    {
        WriteMachines();
        SourceMap map = Inspect().Tables.Single(t => t.File == "jobs.csv").Map!;
        SourceMap answered = AnsweredMap.With(map, new Dictionary<string, string> { ["jobs.csv/field/model"] = "Part Number" });
        Assert.Equal(["Part Number"], answered.Columns["model"]);
        Assert.DoesNotContain("model", answered.Lists.Keys);
        Assert.Contains("brand", answered.Lists.Keys);
        Assert.DoesNotContain(AnsweredMap.With(map, new Dictionary<string, string> { ["jobs.csv/column/Machine ID"] = "none" }).Lists, l => l.Value.Column is not null);
    }

    [Fact]
    public async Task Load_PartLinesByAnInternalNumber_JoinTheirJobs()
    {
        _shop.Write("jobs.csv", Jobs(i => $"K{7000 + i},J-{i:0000},{Day(i)},{Day(i + 2)},washer,QD {i % 30},{Complaints[i % 6]},repaired with part", "Key,Job No,Opened,Closed,Appliance,Model,Complaint,Outcome"))
            .Write("lines.csv", "Line,Job Key,Part Number,Part Name,Qty\n" + string.Concat(Enumerable.Range(1, 200).Select(i => $"{i},K{7001 + (i % 200)},PX-{100 + (i % 25)},Drain pump,1\n")));
        await LoadProposed();
        Assert.Equal(["200|200"], _shop.Rows("from job_parts join jobs using (job_id) select count(*), count(distinct job_id)"));
    }

    // The headers of the numbers do not agree, but two hundred numbers that are seven apart do not meet by chance.
    [Fact]
    public async Task Load_PartLinesByPlainNumbersFarApart_JoinTheirJobs()
    {
        _shop.Write("jobs.csv", Jobs(i => $"{9000 + (7 * i)},R{i:0000}/1,{Day(i)},{Day(i + 2)},washer,QD {i % 30},{Complaints[i % 6]},repaired with part", "Record,Job No,Opened,Closed,Appliance,Model,Complaint,Outcome"))
            .Write("lines.csv", "Line,For job,Part Number,Part Name,Qty\n" + string.Concat(Enumerable.Range(1, 200).Select(i => $"{i},{9007 + (7 * (i % 200))},PX-{100 + (i % 25)},Drain pump,1\n")));
        await LoadProposed();
        Assert.Equal(["200|200"], _shop.Rows("from job_parts join jobs using (job_id) select count(*), count(distinct job_id)"));
    }

    [Fact]
    public void Save_AnswerOnTheJobs_IsHeededByThePartLinesThatPointToThem()
    {
        _shop.Write("jobs.csv", Jobs(i => $"K{7000 + i},J-{i:0000},{Day(i)},{Day(i + 2)},washer,QD {i % 30},{Complaints[i % 6]},repaired with part", "Key,Job No,Opened,Closed,Appliance,Model,Complaint,Outcome"))
            .Write("lines.csv", "Line,Job Key,Part Number,Part Name,Qty\n" + string.Concat(Enumerable.Range(1, 200).Select(i => $"{i},K{7001 + (i % 200)},PX-{100 + (i % 25)},Drain pump,1\n")));
        ProposedMaps.Save(_shop.Input, Inspect(), new Dictionary<string, string>(), write: true, () => Inspect());
        Assert.Contains("job_id", ShopFile.Load(_shop.Input).Sources.Single(m => m.Kind == "job_parts").Lists.Keys);

        var answer = new Dictionary<string, string> { ["jobs.csv/field/job_id"] = "Key" };
        ProposedMaps.Save(_shop.Input, Inspect(answer), answer, write: true, () => Inspect());
        Assert.DoesNotContain("job_id", ShopFile.Load(_shop.Input).Sources.Single(m => m.Kind == "job_parts").Lists.Keys);
    }

    [Fact]
    public async Task Load_ListWithSeveralTexts_TakesTheName()
    {
        _shop.Write("jobs.csv", Jobs(i => $"{i},{Day(i)},{Day(i + 2)},T{1 + (i % 4)},Orvane,QD {i % 30},{Complaints[i % 6]},PX-{100 + (i % 25)}", "Job No,Opened,Closed,Technician,Brand,Model,Complaint,Part Number"))
            .Write("staff.csv", "id,name,specialty,town\nT1,Ada W,laundry and drying,Lower Marrowby\nT2,Ben H,refrigeration sealed,Upper Marrowby\nT3,Cleo M,cooking appliances,Quayside East\nT4,Dan P,dishwashers mostly,Quayside West\n");
        await LoadProposed();
        Assert.Equal(["Ada W", "Ben H", "Cleo M", "Dan P"], _shop.Rows("from jobs select distinct technician order by 1"));
    }

    [Fact]
    public void Inspect_PartLinesNameJobsByAnotherColumn_ThatIsTheJobNumber()
    {
        _shop.Write("jobs.csv", Jobs(i => $"W-{i:0000},N{5000 + i},{Day(i)},{Day(i + 2)},washer,QD {i % 30},{Complaints[i % 6]},repaired with part", "Work Order,Notification,Opened,Closed,Appliance,Model,Complaint,Outcome"))
            .Write("lines.csv", "Line,Work Order,Part Number,Part Name,Qty\n" + string.Concat(Enumerable.Range(1, 200).Select(i => $"{i},W-{1 + (i % 200):0000},PX-{100 + (i % 25)},Drain pump,1\n")));
        ShopInspection shop = Inspect();
        Assert.Equal(["Work Order"], shop.Tables.Single(t => t.File == "jobs.csv").Map!.Columns["job_id"]);
        Assert.Equal(["Work Order"], shop.Tables.Single(t => t.File == "lines.csv").Map!.Columns["job_id"]);
    }

    [Fact]
    public void Inspect_CodesWithLists_SaysWhatItFoundWithTheCount()
    {
        _shop.Write("jobs.csv", Jobs(i => $"{i},{Day(i)},{Day(i + 2)},T{1 + (i % 5)},Orvane,QD {i % 30},{Complaints[i % 6]},PX-{100 + (i % 25)}", "Job No,Opened,Closed,Technician,Brand,Model,Complaint,Part Number"))
            .Write("staff.csv", "Technician,Name\nT1,Ada Winslow\nT2,Ben Harrow\nT3,Cleo Marsh\nT4,Dan Pike\nT5,Eve Lund\n");
        ShopInspection inspection = Inspect();
        Assert.Contains("'Technician' gives technician ('Name') by 'Technician' of staff.csv: 5 of its 5 values are there.", inspection.Tables.Single(t => t.File == "jobs.csv").Notes);
        Assert.Contains("Used for what 'Technician' of jobs.csv means.", inspection.Tables.Single(t => t.File == "staff.csv").Notes);
    }

    [Fact]
    public void Inspect_YearlyLogsNumberedAnew_SaysSoWithTheCount()
    {
        for (int year = 0; year < 2; year++)
        {
            int from = year * 365;
            _shop.Write($"jobs-{2023 + year}.csv", Jobs(i => $"{i},{Day(from + i)},{Day(from + i + 2)},Orvane,QD {i % 30},{Complaints[i % 6]},PX-{100 + (i % 25)}", "Job No,Opened,Closed,Brand,Model,Complaint,Part Number"));
        }

        Assert.Single(Inspect().Tables.SelectMany(t => t.Notes), n => n.StartsWith("Job numbers: of 240 used on more than one of the rows we looked at, 240 have different dates", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Load_ListThatIsGone_SaysWhich()
    {
        _shop.Write("jobs.csv", "Job,In,Tech\n1,2024-01-02,T1\n").Write("shop.json", """
            {"sources": [{"files": "jobs.csv", "kind": "jobs", "columns": {"job_id": "Job", "opened_on": "In", "technician": "Tech"},
              "lists": {"technician": {"file": "staff.csv", "code": "Id", "meaning": "Name"}}}]}
            """);
        var fault = await Assert.ThrowsAnyAsync<PartsSignal.Pipeline.Core.BadInputException>(_shop.Load);
        Assert.Contains("no file is named 'staff.csv'", fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Load_MapWithAList_ReadsTheShopsWordsOfTheMeaning()
    {
        _shop.Write("jobs.csv", "Job,In,Code\n1,2024-01-02,A\n2,2024-01-03,B\n").Write("codes.csv", "Id,Name\nA,all good now\nB,waiting\nB,waiting\n").Write("shop.json", """
            {"sources": [{"files": "jobs.csv", "kind": "jobs", "columns": {"job_id": "Job", "opened_on": "In", "outcome": "Code"},
              "words": {"outcome": {"all good now": "fixed_without_part", "waiting": "part_ordered"}},
              "lists": {"outcome": {"file": "codes.csv", "code": "Id", "meaning": "Name"}}}]}
            """);
        await _shop.Load();
        Assert.Equal(["1|fixed_without_part", "2|part_ordered"], _shop.Rows("from jobs select job_id, outcome order by 1"));
    }

    [Theory]
    [InlineData("Van 1,Van 2,Van 3", "1,2,3")]
    [InlineData("Ada,Ben,Cleo", "Ada,Ben,Cleo")]
    public async Task Load_StockWithAColumnForEachVan_GivesARowForEach(string headers, string vans)
    {
        string[] names = vans.Split(',');
        _shop.Write("jobs.csv", Jobs(i => $"{i},{Day(i)},{Day(i + 2)},{names[i % 3]},Orvane,QD {i % 30},{Complaints[i % 6]},PX-{100 + (i % 25)}", "Job No,Opened,Closed,Van,Brand,Model,Complaint,Part Number"))
            .Write("van stock.csv", $"Part Number,{headers}\n" + string.Concat(Enumerable.Range(0, 25).Select(i => $"PX-{100 + i},{i % 3},{(i % 5 == 0 ? "" : "2")},{i % 2}\n")));
        await LoadProposed();
        Assert.Equal([.. names.Select((n, i) => $"{n}|25|{new[] { 24, 40, 12 }[i]}")], _shop.Rows("from van_counts select van, count(*), sum(on_hand) group by van order by van"));
        Assert.All(_shop.Rows("from loads select rows_read - loaded where kind = 'van_counts'"), left => Assert.Equal("0", left));
    }

    [Fact]
    public async Task Inspect_YearlyLogsNumberedAnew_AsksWhatTellsTheirJobsApart()
    {
        string Log(int year) => Jobs(i => $"{i},{Day(i + (365 * year))},{Day(i + 2 + (365 * year))},{i % 3},Orvane,QD {(i + (7 * year)) % 30},{Complaints[(i + year) % 6]},PX-{100 + (i % 25)}", "Job No,Opened,Closed,Van,Brand,Model,Complaint,Part Number");
        _shop.Write("log a.csv", Log(0)).Write("log b.csv", Log(1));
        ReadingQuestion asked = Inspect().Questions.Single(q => q.Key == "log a.csv/job-numbers");
        Assert.Equal("240 of 240 job numbers used on more than one row have different dates. What tells these jobs apart?", asked.Text);
        Assert.Equal("year", asked.Default);
        Assert.Contains(asked.Choices, c => c is { Value: "file", Label: "the file: 0 numbers are still used for different dates" });

        var answers = new Dictionary<string, string> { [asked.Key] = "file" };
        ShopInspection found = Inspect(answers);
        Assert.DoesNotContain(found.Questions, q => q.Key == asked.Key);
        File.WriteAllText(Path.Combine(_shop.Input, "shop.json"), ShopFileWriter.With(null, [.. found.Tables.Select(t => t.Map).OfType<SourceMap>()], answers));
        await _shop.Load();
        Assert.Equal(["480|log a/1"], _shop.Rows("from jobs select count(*), min(job_id)"));
    }

    [Fact]
    public async Task Load_StockWithAColumnForEachMonth_CountsTheNewest()
    {
        _shop.Write("jobs.csv", Jobs(i => $"{i},{Day(i)},{Day(i + 2)},{1 + (i % 3)},Orvane,QD {i % 30},{Complaints[i % 6]},PX-{100 + (i % 25)}", "Job No,Opened,Closed,Van,Brand,Model,Complaint,Part Number"))
            .Write("van stock.csv", "Van,Part Number,Jan 2024,Feb 2024,Mar 2024,Apr 2024\n" + string.Concat(Enumerable.Range(0, 75).Select(i => $"{1 + (i % 3)},PX-{100 + (i / 3)},5,4,{i % 4},\n")));
        ShopInspection found = Inspect(new() { ["van stock.csv/kind"] = "van_counts" });
        SourceMap map = found.Tables.Single(t => t.File == "van stock.csv").Map!;
        Assert.Equal(["Jan 2024", "Feb 2024", "Mar 2024"], map.Columns["on_hand"]);
        File.WriteAllText(Path.Combine(_shop.Input, "shop.json"), ShopFileWriter.With(null, [.. found.Tables.Select(t => t.Map).OfType<SourceMap>()]));
        await _shop.Load();
        Assert.Equal(["75|2024-03-01|2024-03-01"], _shop.Rows("from van_counts select count(*), min(counted_on)::varchar, max(counted_on)::varchar"));
        Assert.Equal([$"{Enumerable.Range(0, 75).Sum(i => i % 4)}"], _shop.Rows("from van_counts select sum(on_hand)"));
    }

    [Fact]
    public void Inspect_RegisterThatLacksSomeMachines_AsksAndHeedsTheAnswer()
    {
        WriteMachines();
        string[] lines = File.ReadAllLines(Path.Combine(_shop.Input, "machines.csv"));
        File.WriteAllLines(Path.Combine(_shop.Input, "machines.csv"), lines[..46]);
        ShopInspection found = Inspect(new() { ["machines.csv/field/serial"] = "Serial" });
        ReadingQuestion asked = Assert.Single(found.Questions, q => q.Key == "jobs.csv/link/Machine ID");
        Assert.Equal("Does column 'Machine ID' of 'jobs.csv' mean the same as 'Machine ID' of 'machines.csv'? 45 of its 60 values are there.", asked.Text);
        Assert.Equal(["machines.csv/Machine ID", "none"], asked.Choices.Select(c => c.Value));
        Assert.DoesNotContain(found.Tables.Single(t => t.File == "jobs.csv").Map!.Lists, l => l.Value.Column is not null);

        ShopInspection linked = Inspect(new() { ["machines.csv/field/serial"] = "Serial", [asked.Key] = "machines.csv/Machine ID" });
        Assert.Equal("Machine ID", linked.Tables.Single(t => t.File == "jobs.csv").Map!.Lists["model"].Column);
        Assert.DoesNotContain(linked.Questions, q => q.Key == asked.Key);
        Assert.DoesNotContain(Inspect(new() { ["machines.csv/field/serial"] = "Serial", [asked.Key] = "none" }).Questions, q => q.Key == asked.Key);
    }

    [Fact]
    public async Task Load_MachineThatTheRegisterLacks_HasNoModelInsteadOfItsNumber()
    {
        WriteMachines();
        SourceMap map = Inspect().Tables.Single(t => t.File == "jobs.csv").Map!;
        File.WriteAllText(Path.Combine(_shop.Input, "shop.json"), ShopFileWriter.With(null, [map]));
        string[] lines = File.ReadAllLines(Path.Combine(_shop.Input, "machines.csv"));
        File.WriteAllLines(Path.Combine(_shop.Input, "machines.csv"), lines[..46]);
        await _shop.Load();
        Assert.Equal(["60|0|60"], _shop.Rows("from jobs select count(*) filter (model_raw is null), count(*) filter (model_raw like 'M1%'), count(distinct unit_id)"));
    }

    private void WriteMachines() =>
        _shop.Write("machines.csv", "Machine ID,Serial,Model,Brand,Type,Installed\n" + string.Concat(Enumerable.Range(1, 60).Select(i => $"M{1000 + i},SN{i * 7919 % 100000:00000}X,QD {i % 12},Orvane,{(i % 2 == 0 ? "washer" : "dryer")},{Day(i)}\n")))
            .Write("jobs.csv", Jobs(i => $"{i},{Day(i + 400)},{Day(i + 402)},M{1001 + (i % 60)},{Complaints[i % 6]},repaired with part,PX-{100 + (i % 25)}", "Job No,Opened,Closed,Machine ID,Complaint,Outcome,Part Number"));

    private ShopInspection Inspect(Dictionary<string, string>? answers = null) =>
        new Inspector(new ReadingLimits(), WordSets.Load(null), answers).Inspect(ShopTables.In(_shop.Input, new ReadingLimits()), TestContext.Current.CancellationToken);

    private async Task LoadProposed()
    {
        SourceMap[] maps = [.. Inspect().Tables.Select(t => t.Map).OfType<SourceMap>()];
        File.WriteAllText(Path.Combine(_shop.Input, "shop.json"), ShopFileWriter.With(null, maps));
        await _shop.Load();
    }

    private static string Day(int i) => new DateOnly(2023, 1, 2).AddDays(i).ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);

    private static string Jobs(Func<int, string> row, string header)
    {
        var text = new StringBuilder(header).Append('\n');
        for (int i = 1; i <= 240; i++)
        {
            text.Append(row(i)).Append('\n');
        }

        return text.ToString();
    }
}
