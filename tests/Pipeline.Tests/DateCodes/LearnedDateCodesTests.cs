using System.Text.Json.Nodes;
using PartsSignal.Analysis.CrossReference;
using PartsSignal.Pipeline.DateCodes;
using PartsSignal.Pipeline.Learning;
using PartsSignal.Pipeline.Review;
using PartsSignal.Pipeline.Running;
using PartsSignal.Pipeline.Tests.Transform;
using PartsSignal.Pipeline.Words;
using PartsSignal.SampleShop.World;

namespace PartsSignal.Pipeline.Tests.DateCodes;

/// <summary>A shop whose register shows how serials tell the build date: year and ISO week in front.</summary>
public sealed class LearnedDateCodesTests(RegisterShop loaded) : IClassFixture<RegisterShop>, IDisposable
{
    internal const string Settings = """
        {"sources": [
          {"files": "calls.csv", "kind": "jobs", "dateOrder": "ymd",
           "columns": {"job_id": "Call", "opened_on": "Rang", "closed_on": "Done", "appliance_type": "Kind", "brand": "Make", "model": "Model",
                       "serial": "Serial", "complaint": "Trouble", "technician": "Engineer", "outcome": "Result", "part": "Fitted"}},
          {"files": "register.csv", "kind": "units", "dateOrder": "ymd",
           "columns": {"serial": "Serial", "brand": "Make", "model": "Model", "installed_on": "In use since"}}]}
        """;

    private const string Given = "brand,pattern,year_letters,year_of_first,cycle_years,month_letters\nOstmark,^X(?<year>\\d{2}),,,,\n";
    private readonly SmallShop _shop = loaded.Copy();

    public void Dispose() => _shop.Dispose();

    [Fact]
    public void Load_RegisterThatShowsTheDateCode_AgesJobsAndSaysSo()
    {
        LoadReport report = loaded.Report;
        DateCodeRule rule = Assert.Single(report.DateCodes);
        Assert.Equal(("Ostmark", "999999999", "year in characters 1 to 2, week in characters 3 to 4", "proven", 0), (rule.Brand, rule.SerialForm, rule.DateCode, rule.Basis, rule.Contradicting));
        Assert.Equal(report.Files.First(f => f.Rows.File == "register.csv").Rows.Loaded, rule.Confirming);
        Assert.True(rule.JobsAged > 1400, $"{rule.JobsAged}");
        Assert.Equal([$"{rule.JobsAged}"], _shop.Rows("from jobs select count(*) where age_basis = 'date code'"));

        var record = new JsonObject();
        LoadStep.Record(report, record);
        Assert.Equal(rule.Confirming, (int)record["date_codes"]![0]!["confirming"]!);

        // A serial that the store does not know is dated by it as well.
        // Weeks are counted by ISO or from January: the register does not tell which.
        Assert.Equal("2015-03-09/2015-03-18", LookupStore.DateCodes(_shop.Output, _shop.Input).Read("Ostmark", "151111000", new DateOnly(2024, 1, 1)).Written);

        // Week 54 is no week: the serial stays undated, and breaks no rule of its brand.
        SerialCodes codes = LookupStore.DateCodes(_shop.Output, _shop.Input);
        Assert.All(["155411000", "150011000", "X15111000"], serial => Assert.Equal(SerialDateReading.Silent, codes.Read("Ostmark", serial, new DateOnly(2024, 1, 1))));

        // The list shows examples, but no serial.
        string[] list = _shop.List(ReviewNames.DateCodes);
        Assert.Equal(2, list.Length);
        Assert.Contains(",yes,", list[1], StringComparison.Ordinal);
        Assert.Contains("***** means ", list[1], StringComparison.Ordinal);
        string written = string.Join('\n', list) + File.ReadAllText(Path.Combine(_shop.Output.Stage, DateCodeSearch.FileName));
        Assert.All(File.ReadLines(Path.Combine(_shop.Input, "register.csv")).Skip(1), l => Assert.DoesNotContain(l.Split(',')[0], written, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Load_AnswerToTheRule_IsHeededOrReturnsWithANote()
    {
        _shop.Answer((ReviewNames.DateCodes, "Ostmark", "perhaps"));
        LoadReport unclear = await _shop.Load();
        Assert.Equal("proven", unclear.DateCodes[0].Basis);
        Assert.Equal(1, unclear.Review.Single(r => r.File == ReviewNames.DateCodes).NotUnderstood);
        Assert.Contains("is neither yes nor no", _shop.List(ReviewNames.DateCodes)[1], StringComparison.Ordinal);

        _shop.Answer((ReviewNames.DateCodes, "Ostmark", "No"));
        LoadReport report = await _shop.Load();
        Assert.Equal(("rejected", false, 0L), (report.DateCodes[0].Basis, report.DateCodes[0].InUse, report.DateCodes[0].JobsAged));
        Assert.Equal(["0"], _shop.Rows("from jobs select count(*) where age_basis = 'date code'"));
        Assert.EndsWith(",No", _shop.List(ReviewNames.DateCodes)[1], StringComparison.Ordinal);
    }

    [Fact]
    public async Task Load_ApprovedRule_HoldsWithoutTheRegister()
    {
        _shop.Answer((ReviewNames.DateCodes, "Ostmark", "yes"));
        string[] register = File.ReadAllLines(Path.Combine(_shop.Input, "register.csv"));
        File.WriteAllLines(Path.Combine(_shop.Input, "register.csv"), register.Take(3));
        LoadReport report = await _shop.Load();
        Assert.Equal("approved", Assert.Single(report.DateCodes).Basis);
        Assert.True(report.DateCodes[0].JobsAged > 1400);
    }

    [Fact]
    public async Task Load_BrandWithAGivenRule_LearnsNone()
    {
        _shop.Write("serial-codes.csv", Given);
        Assert.Empty((await _shop.Load()).DateCodes);
    }

    [Fact]
    public async Task Load_AfterAChangeOfTheRegister_LearnsAndStagesAnew()
    {
        string path = Path.Combine(_shop.Input, "register.csv");
        string[] register = File.ReadAllLines(path);
        File.WriteAllLines(path, register.Take(3));
        Assert.Empty((await _shop.Load()).DateCodes);
        File.WriteAllLines(path, register);
        Assert.Equal("proven", Assert.Single((await _shop.Load()).DateCodes).Basis);
        Assert.NotEqual(["0"], _shop.Rows("from jobs select count(*) where age_basis = 'date code'"));
        Assert.All((await _shop.Load()).Staged, s => Assert.True(s.FromCache));
    }

    [Fact]
    public async Task Load_NoFileWithSerialsAndDates_IsNotSearched()
    {
        _shop.Write("shop.json", Settings.Replace(", \"installed_on\": \"In use since\"", "", StringComparison.Ordinal));
        File.Delete(Path.Combine(_shop.Output.Stage, DateCodeSearch.FileName));
        Assert.Empty((await _shop.Load()).DateCodes);
        Assert.False(File.Exists(Path.Combine(_shop.Output.Stage, DateCodeSearch.FileName)));
    }
}

/// <summary>That shop, loaded once.</summary>
public sealed class RegisterShop : SharedShop
{
    internal override void Write(SmallShop shop)
    {
        shop.Write("shop.json", LearnedDateCodesTests.Settings);
        OwnWordsShop.Write(shop.Input, 11);
    }
}
