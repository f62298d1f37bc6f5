using PartsSignal.Analysis.CheckOrder;
using PartsSignal.Analysis.Prediction.Answers;
using PartsSignal.Analysis.Sql;
using PartsSignal.Pipeline.Review;
using PartsSignal.SampleShop.World;

namespace PartsSignal.Pipeline.Tests.Transform;

/// <summary>A shop whose words are not those of the tables: everything is counted under its own words, and asked about once.</summary>
public sealed class OwnWordsShopTests : IDisposable
{
    private const string Settings = """
        {"sources": [
          {"files": "calls.csv", "kind": "jobs", "dateOrder": "ymd",
           "columns": {"job_id": "Call", "opened_on": "Rang", "closed_on": "Done", "appliance_type": "Kind", "brand": "Make", "model": "Model",
                       "serial": "Serial", "complaint": "Trouble", "technician": "Engineer", "outcome": "Result", "part": "Fitted"}},
          {"files": "register.csv", "kind": "units", "dateOrder": "ymd",
           "columns": {"serial": "Serial", "brand": "Make", "model": "Model", "installed_on": "In use since"}}]}
        """;

    private readonly SmallShop _shop = new();
    private readonly OwnWordsTruth _truth;

    public OwnWordsShopTests()
    {
        _shop.Write("shop.json", Settings);
        _truth = OwnWordsShop.Write(_shop.Input, 11);
    }

    public void Dispose() => _shop.Dispose();

    [Fact]
    public async Task Load_ShopOfOwnWords_CountsThemAsTheyAre()
    {
        await _shop.Load();
        Assert.Equal(_truth.Jobs, Count("true"));
        Assert.Equal(_truth.Parts["drain motor"], Count("main_component = 'drain_motor'"));
        Assert.Equal(_truth.Parts["drain pump"], Count("main_component = 'drain_pump'"));
        Assert.Equal(_truth.Parts["motor"], Count("main_component = 'motor' and appliance_type = 'washer'"));
        Assert.Equal(0, Count("main_component is null or main_component = 'other_part'"));
        Assert.Equal(_truth.Troubles["dispenser no water"], Count("complaint_kind = 'dispenser_no_water'"));
        Assert.Equal(_truth.Troubles["no water at the dispenser"], Count("complaint_text = 'no water at the dispenser' and complaint_kind <> 'other'"));

        // No phantom families: O for 0 joins the usual writing, and is listed.
        Assert.Equal(_truth.Families.Order(StringComparer.Ordinal), _shop.Rows("from jobs select distinct model_family order by 1"));
        Assert.Equal(_truth.LookAlikes, Count("model_basis = 'confusable' and model_number <> upper(model_raw)"));
        Assert.Contains(_shop.List(ReviewNames.Models), l => l.Contains("WD441O", StringComparison.Ordinal));

        // Each is asked about once.
        Assert.Single(_shop.List(ReviewNames.Components), l => l.StartsWith("drain motor,", StringComparison.Ordinal));
        Assert.Single(_shop.List(ReviewNames.Complaints), l => l.StartsWith("dispenser no water,", StringComparison.Ordinal));
        Assert.Contains("dispenser_no_water", File.ReadAllText(Path.Combine(_shop.Output.Review, "README.txt")));

        using Database store = _shop.Open();
        LookupFacts facts = FactReader.Read(store, CheckTable.Empty, []);
        Assert.Equal(("base", "WD4410"), facts.Resolve(_truth.NewVariant) is { } found ? (found.Basis, found.Model.ModelFamily) : default);
        Assert.Equal(["en"], facts.Languages);
        Assert.Contains(new OwnComplaintWords("dispenser_no_water", "dispenser no water"), facts.OwnWords);
    }

    [Fact]
    public async Task Load_MergedWords_JoinWhatTheOwnerNames()
    {
        await _shop.Load();
        _shop.Answer((ReviewNames.Components, "drain motor,", "drain_pump"), (ReviewNames.Complaints, "dispenser no water,", "no_ice"));
        await _shop.Load();
        Assert.Equal(_truth.Parts["drain motor"] + _truth.Parts["drain pump"], Count("main_component = 'drain_pump'"));
        Assert.Equal(_truth.Troubles["dispenser no water"], Count("complaint_kind = 'no_ice'"));
    }

    private long Count(string where) => long.Parse(_shop.Rows($"from jobs select count(*) where {where}")[0], System.Globalization.CultureInfo.InvariantCulture);
}
