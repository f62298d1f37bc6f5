using PartsSignal.Analysis.CheckOrder;
using PartsSignal.Analysis.Prediction.Answers;
using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.VanPlan;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Review;
using PartsSignal.Pipeline.Running;
using PartsSignal.Pipeline.Understanding;
using PartsSignal.Pipeline.Words;
using PartsSignal.SampleShop.World;

namespace PartsSignal.Pipeline.Tests.Transform;

/// <summary>A shop whose words are not those of the tables: everything is counted under its own words, and asked about once.</summary>
public sealed class OwnWordsShopTests : IDisposable
{
    // What each column gives; the rest is the shop's words, which no map tells.
    private static readonly (string File, string Field, string Header)[] Expected =
    [
        ("calls.csv", "job_id", "Call"), ("calls.csv", "opened_on", "Rang"), ("calls.csv", "closed_on", "Done"), ("calls.csv", "appliance_type", "Kind"),
        ("calls.csv", "brand", "Make"), ("calls.csv", "model", "Model"), ("calls.csv", "serial", "Serial"), ("calls.csv", "complaint", "Trouble"),
        ("calls.csv", "technician", "Engineer"), ("calls.csv", "outcome", "Result"), ("calls.csv", "description", "Fitted"),
        ("calls.csv", "part", "Part No"), ("calls.csv", "price", "Price"),
        ("parts.csv", "part", "Part No"), ("parts.csv", "description", "Name"), ("parts.csv", "price", "Cost"),
        ("register.csv", "serial", "Serial"), ("register.csv", "brand", "Make"), ("register.csv", "model", "Model"), ("register.csv", "installed_on", "In use since"),
    ];

    private readonly SmallShop _shop = new();
    private readonly OwnWordsTruth _truth;

    public OwnWordsShopTests() => _truth = OwnWordsShop.Write(_shop.Input, 11);

    public void Dispose() => _shop.Dispose();

    [Fact]
    public void Inspect_ShopOfOwnWords_ReadsEveryColumnRight()
    {
        ShopInspection found = new Inspector(new ReadingLimits(), WordSets.Load(null), null).Inspect(ShopTables.In(_shop.Input, new ReadingLimits()), TestContext.Current.CancellationToken);
        Assert.Equal(["jobs", "parts", "units"], found.Tables.Select(t => t.Map?.Kind));
        Assert.All(Expected, e => Assert.Equal([e.Header], found.Tables.Single(t => t.File == e.File).Map!.Columns.GetValueOrDefault(e.Field, [])));
        Assert.Equal(Expected.Length, found.Tables.Sum(t => t.Map!.Columns.Count));
    }

    [Fact]
    public async Task Load_ShopOfOwnWords_CountsThemAsTheyAre()
    {
        LoadReport report = await LoadProposed();
        Assert.Equal(_truth.Jobs, Count("true"));
        Assert.Equal(_truth.Jobs, Count("closed_on is not null"));
        Assert.Equal(_truth.Parts[("Dishwasher", "drain motor")], Count("main_component = 'drain_motor'"));
        Assert.Equal(_truth.Parts[("Washer", "drain pump")], Count("main_component = 'drain_pump'"));
        Assert.Equal(_truth.Parts[("Washer", "motor")], Count("main_component = 'motor'"));
        Assert.Equal(_truth.Parts[("Fridge", "motor")], Count("main_component = 'refrigerator_motor'"));
        Assert.Equal(0, Count("main_component is null or main_component = 'other_part'"));
        Assert.Equal(_truth.Troubles["dispenser no water"], Count("complaint_kind = 'dispenser_no_water'"));
        Assert.Equal(_truth.Troubles["no water at the dispenser"], Count("complaint_text = 'no water at the dispenser' and complaint_kind <> 'other'"));

        // No phantom families: O for 0 joins the usual writing, and is listed.
        Assert.Equal(_truth.Families.Order(StringComparer.Ordinal), _shop.Rows("from jobs select distinct model_family order by 1"));
        Assert.Equal(_truth.LookAlikes, Count("model_basis = 'confusable' and model_number <> upper(model_raw)"));
        Assert.Contains(_shop.List(ReviewNames.Models), l => l.Contains("WD441O", StringComparison.Ordinal));

        // Technicians stand in for vans.
        Assert.Equal(_truth.Technicians.Order(StringComparer.Ordinal), _shop.Rows("from jobs select distinct van where van_basis = 'technician' order by 1"));
        Assert.Contains("Your files name no vans, so each technician is treated as one van.", report.Assumptions);

        using Database store = _shop.Open();
        ShopData data = ShopDataReader.Read(store, null)!;
        var options = new VanPlanOptions();
        var plan = ShopPlan.Create(data, new ShopViews(data, options), options, 0.8, BookedJobs.None);
        Assert.Equal(_truth.Technicians.Order(StringComparer.Ordinal), plan.Summaries.Select(s => s.Van));
        Assert.All(plan.Summaries, s => Assert.NotEqual(0, s.Pieces));

        // Each is asked about once.
        Assert.Single(_shop.List(ReviewNames.Components), l => l.StartsWith("refrigerator motor,", StringComparison.Ordinal));
        Assert.Single(_shop.List(ReviewNames.Components), l => l.StartsWith("drain motor,", StringComparison.Ordinal));
        Assert.Single(_shop.List(ReviewNames.Complaints), l => l.StartsWith("dispenser no water,", StringComparison.Ordinal));
        Assert.Contains("dispenser_no_water", File.ReadAllText(Path.Combine(_shop.Output.Review, "README.txt")));

        LookupFacts facts = FactReader.Read(store, CheckTable.Empty, []);
        Assert.Equal(("base", "WD4410"), facts.Resolve(_truth.NewVariant) is { } found ? (found.Basis, found.Model.ModelFamily) : default);
        Assert.Equal(["en"], facts.Languages);
        Assert.Contains(new OwnComplaintWords("dispenser_no_water", "dispenser no water"), facts.OwnWords);
    }

    // In the plain run OwnComponentsTests and ReviewLoopTests merge words one by one.
    [LongFact]
    public async Task Load_MergedWords_JoinWhatTheOwnerNames()
    {
        await LoadProposed();
        _shop.Answer((ReviewNames.Components, "drain motor,", "drain_pump"), (ReviewNames.Components, "refrigerator motor,", "evaporator_fan"), (ReviewNames.Complaints, "dispenser no water,", "no_ice"));
        await LoadProposed();
        Assert.Equal(_truth.Parts[("Dishwasher", "drain motor")] + _truth.Parts[("Washer", "drain pump")], Count("main_component = 'drain_pump'"));
        Assert.Equal((_truth.Parts[("Fridge", "motor")], _truth.Parts[("Washer", "motor")]), (Count("main_component = 'evaporator_fan'"), Count("main_component = 'motor'")));
        Assert.DoesNotContain(_shop.List(ReviewNames.Components), l => l.StartsWith("refrigerator motor,", StringComparison.Ordinal) && l.EndsWith(','));
        Assert.Equal(_truth.Troubles["dispenser no water"], Count("complaint_kind = 'no_ice'"));
    }

    // With what inspect proposes, and no question answered.
    private Task<LoadReport> LoadProposed() => ShopLoad.RunAsync(
        _shop.Input, _shop.Output, ProposedMaps.Complete(_shop.Input, ShopFile.Load(_shop.Input), TestContext.Current.CancellationToken).Settings, TimeProvider.System, null, TestContext.Current.CancellationToken);

    private long Count(string where) => long.Parse(_shop.Rows($"from jobs select count(*) where {where}")[0], System.Globalization.CultureInfo.InvariantCulture);
}
