using System.Text.Json.Nodes;
using PartsSignal.Analysis.Prediction;
using PartsSignal.Analysis.Prediction.Contest;
using PartsSignal.Analysis.Sql;
using PartsSignal.Pipeline.Commands;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Learning;
using PartsSignal.Pipeline.Privacy;

namespace PartsSignal.Pipeline.Tests.Commands;

public sealed class LookupCommandTests : IClassFixture<WashersShop>, IDisposable
{
    private readonly string _out = Path.Combine(Path.GetTempPath(), "partssignal-tests", Path.GetRandomFileName());

    public LookupCommandTests(WashersShop shop) => FolderCopy.Write(shop.Folder, _out);

    [Fact]
    public async Task Lookup_AsTable_ReadsOnAPhone()
    {
        string text = await TextAsync("--model", "WA-100", "--complaint", "does not fill", "--age", "6");
        Assert.All(text.Split(Environment.NewLine), line => Assert.InRange(line.Length, 0, NarrowText.Width));
        Assert.Contains("From 40 similar jobs on this model.", text, StringComparison.Ordinal);
        Assert.Contains("inlet valve, usual (30 of 40 jobs), BRING", text.Replace(Environment.NewLine + "      ", " ", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.Contains("1 x P-2", text, StringComparison.Ordinal);
        Assert.Contains("CHECK IN THIS ORDER", text, StringComparison.Ordinal);
        Assert.Contains("service sheet", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Lookup_AsCsv_GivesTheOddsARowPerNeed()
    {
        string[] lines = (await TextAsync("--model", "WA100", "--complaint", "no_fill", "--format", "csv")).Split(Environment.NewLine, StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal("need,odds,word,similar_jobs,part_number,quantity,bring_from,bring", lines[0]);
        Assert.StartsWith("inlet_valve,0.7", lines[1], StringComparison.Ordinal);
        Assert.Contains(",usual,30,P-2,1,", lines[1], StringComparison.Ordinal);
        Assert.StartsWith("none,0.2", lines[2], StringComparison.Ordinal);
    }

    [Fact]
    public async Task Lookup_AsJson_HoldsTheWholeAnswer()
    {
        JsonObject answer = JsonNode.Parse(await TextAsync("--model", "WA-100", "--complaint", "does not fill", "--format", "json"))!.AsObject();
        Assert.Equal("model", (string?)answer["evidence"]!["source"]);
        Assert.Equal("inlet_valve", (string?)answer["needs"]![0]!["need"]);
        Assert.Equal(1, answer["needs"]!.AsArray().Sum(n => (double)n!["odds"]!) + (double)answer["other_odds"]!, 9);
        Assert.NotEmpty(answer["checks"]!["steps"]!.AsArray());
        Assert.NotEmpty(answer["cautions"]!.AsArray());
    }

    [Fact]
    public async Task Lookup_SerialOfAKnownAppliance_BringsItsModelItsAgeAndWhatWasFittedBefore()
    {
        JsonNode call = JsonNode.Parse(await TextAsync("--serial", "sn 4711", "--complaint", "does not fill", "--on", "2025-03-11", "--format", "json"))!["call"]!;
        Assert.Equal("WA-100", (string?)call["model_number"]);
        Assert.Equal("register", (string?)call["age_basis"]);
        Assert.Equal(5.2, (double)call["age_years"]!, 1);
        Assert.Equal("contract", (string?)call["customer_kind"]);
        JsonNode visit = Assert.Single(call["earlier"]!.AsArray())!;
        Assert.Equal(("inlet_valve", 60), ((string?)visit["need"], (int)visit["days_ago"]!));
    }

    [Fact]
    public async Task Lookup_SerialBeforeTheFirstVisit_KnowsNothingOfLaterOnes()
    {
        JsonNode call = JsonNode.Parse(await TextAsync("--serial", WashersShop.Serial, "--complaint", "no_fill", "--on", "2025-01-02", "--format", "json"))!["call"]!;
        Assert.Empty(call["earlier"]!.AsArray());
        Assert.Null((string?)call["model_number"]);
    }

    [Fact]
    public async Task Lookup_UnknownType_SaysWhatItRestsOn()
    {
        string text = await TextAsync("--type", "dryer", "--complaint", "does not heat");
        Assert.Contains("all jobs", text, StringComparison.Ordinal);
        Assert.Contains("The model is not known", text, StringComparison.Ordinal);
        Assert.Contains("odds are those of other types", Unbroken(text), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Lookup_UnknownModelAndNoType_ClaimsNothingOfTheAppliance()
    {
        string text = Unbroken(await TextAsync("--model", "NOPE-77", "--complaint", "zzz"));
        Assert.StartsWith("appliance unknown, age unknown, complaint not recognized Too few jobs are like this one: the figures are from all jobs of the shop, 40. ", text, StringComparison.Ordinal);
        Assert.Contains("Neither the model nor the type of the appliance is known", text, StringComparison.Ordinal);
        Assert.DoesNotContain("this all jobs", text, StringComparison.Ordinal);
        Assert.DoesNotContain("this type", text, StringComparison.Ordinal);
        Assert.DoesNotContain("similar jobs", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Lookup_TypeAloneOfAShopThatKnowsIt_SaysWhatIsUnknown()
    {
        string text = Unbroken(await TextAsync("--type", "washer"));
        Assert.StartsWith("washer, model unknown, age unknown, no complaint given From 40 similar jobs on this type, any complaint. ", text, StringComparison.Ordinal);
        Assert.Contains("odds are those of this type of appliance", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Lookup_SeveralFaults_NamesThemAll()
    {
        (int code, _, string error) = await RunAsync("--type", "toaster", "--age", "99", "--on", "yesterday", "--customer", "nobody");
        Assert.Equal(ExitCode.BadInput, code);
        Assert.All(["--type toaster", "--age 99", "--on yesterday", "--customer nobody"], (string part) => Assert.Contains(part, error, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Lookup_NoModelYet_SaysToRunFirst()
    {
        File.Delete(ModelStore.PathOf(new OutputFolder(_out)));
        (int code, _, string error) = await RunAsync("--type", "washer");
        Assert.Equal(ExitCode.BadInput, code);
        Assert.Contains("Run 'partssignal run' first", error, StringComparison.Ordinal);
    }

    public void Dispose() => Directory.Delete(_out, recursive: true);

    private static string Unbroken(string text) => string.Join(' ', text.Split([' ', '\r', '\n'], StringSplitOptions.RemoveEmptyEntries));

    private async Task<string> TextAsync(params string[] args)
    {
        (int code, string text, string error) = await RunAsync(args);
        Assert.Equal(("", ExitCode.Done), (error, code));
        return text;
    }

    private async Task<(int Code, string Text, string Error)> RunAsync(params string[] args)
    {
        using var text = new StringWriter();
        using var error = new StringWriter();
        int code = await CommandHost.RunAsync(["lookup", "--out", _out, "--input", _out, .. args], text, error, TimeProvider.System);
        return (code, text.ToString(), error.ToString());
    }
}

/// <summary>A shop that fitted the same valve on forty washers, one of which it knows by its serial, with its store and model.</summary>
public sealed class WashersShop : IDisposable
{
    internal const string Serial = "SN-4711";

    public WashersShop() => Write();

    public string Folder { get; } = Directory.CreateTempSubdirectory("partssignal-tests-").FullName;

    public void Dispose() => Directory.Delete(Folder, recursive: true);

    private void Write()
    {
        var output = new OutputFolder(Folder);
        File.WriteAllText(Path.Combine(Folder, "shop.json"), "{}");
        string unit = SerialKey.Create(IdentityKey.LoadOrMake(output.Key), "Norvik", Serial)!;
        using Database database = Database.Open(new DatabaseOptions { Threads = 1 });
        foreach (string name in StoreTables.Names)
        {
            StoreTables.CreateEmpty(database, name);
        }

        database.Execute("""
            insert into jobs by name
            select 'J' || i as job_id, date '2025-01-09' - i as opened_on, date '2025-01-10' - i as closed_on, 'closing day' as closing_basis, case when i = 0 then $unit end as unit_id,
                'washer' as appliance_type, 'Norvik' as brand, 'WA-100' as model_number, 'WA1' as model_family, 'exact' as model_basis,
                case when i = 0 then 'contract' else 'household' end as customer_kind,
                case when i = 0 then date '2020-01-01' end as made_from, case when i = 0 then date '2020-01-01' end as made_to,
                case when i = 0 then 5.02 end as age_years, case when i = 0 then 'register' else 'unknown' end as age_basis,
                'does not fill' as complaint_text, 'no_fill' as complaint_kind, 'fixed_with_part' as outcome,
                case when i % 4 = 3 then 'none' else 'inlet_valve' end as main_component, 'f' as source_file, i as source_line
            from (select unnest(range(0, 40))::integer as i)
            """, ("unit", unit));
        database.Execute("""
            insert into job_parts by name
            select job_id, 1 as line, 'P-2' as part_number, 'inlet_valve' as component, 'exact' as part_basis, 1 as quantity, 'f' as source_file, source_line
            from jobs where main_component = 'inlet_valve';
            insert into parts by name
            select 'P-2' as part_number, 'P-2' as current_number, 'Valve' as description, 'inlet_valve' as component, 20.00 as price, 1.0 as space_units,
                true as available, 'f' as source_file, 1 as source_line;
            insert into fitments by name select 'WA1' as model_family, 'P-2' as part_number, 'inlet_valve' as component, 'seen' as basis, 30 as times_seen, 1 as typical_quantity;
            insert into models by name
            select 'WA-100' as model_number, 'WA1' as model_family, 'washer' as appliance_type, 'Norvik' as brand, 'listed' as family_basis, 'WA-100' as base
            """);
        foreach (string name in StoreTables.Names)
        {
            string folder = Directory.CreateDirectory(Path.Combine(Folder, "store", name)).FullName;
            database.Execute($"copy {Database.Quote(name)} to {Database.Literal(Path.Combine(folder, "part.parquet"))} (format parquet)");
        }

        ModelStore.Write(output, PartLearner.Learn(TrainingTable.Read(database), new ContestOptions()).Model);
    }
}
