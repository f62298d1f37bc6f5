using PartsSignal.Analysis.Rates;
using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Tests.Fixtures;

namespace PartsSignal.Analysis.Tests.Rates;

public class PartServiceRatesTests
{
    private static readonly DateOnly Day = new(2022, 1, 1);
    private static readonly DateOnly End = new(2023, 12, 31);
    private static readonly RateOptions Small = new() { FewestUnitYears = 0.1 };

    [Fact]
    public void Table_PartReplacedAgain_ServesUntilThatDayAndTheNextOneToTheEnd()
    {
        using Database database = Shop(("A", Day), ("A", Day.AddDays(100))).Build(ResultModels.Rates, End);
        FailureRate rate = Single(PartServiceRates.Table(database, Small), "A");
        Assert.Equal((1, 729 / 365.25), (rate.Events, rate.Exposure));
        Assert.Equal(100 / rate.Exposure, rate.Estimate!.Value, 1e-9);
        Assert.Equal((RateBasis.PartYears, "part-years", "per 100 part-years"), (rate.Basis, rate.ExposureUnit, rate.Unit));
    }

    [Fact]
    public void Table_TwoSuppliers_EventIsOfThePartThatFailed()
    {
        using Database database = Shop(("A", Day), ("B", Day.AddDays(100))).Build(ResultModels.Rates, End);
        IReadOnlyList<FailureRate> rates = PartServiceRates.Table(database, Small);
        Assert.Equal((1, 100 / 365.25), (Single(rates, "A").Events, Single(rates, "A").Exposure));
        Assert.Equal((0, 629 / 365.25), (Single(rates, "B").Events, Single(rates, "B").Exposure));
        FailureRate all = rates.Single(r => r is { Grouping: "any_supplier", Supplier: null });
        Assert.Equal((1, 729 / 365.25), (all.Events, all.Exposure));
        Assert.All(rates.Where(r => r.Supplier is not null), r => Assert.Equal("suppliers", r.ShrunkOver));
        Assert.InRange(Single(rates, "A").Shrunk!.Value, all.Estimate!.Value, Single(rates, "A").Estimate!.Value);
    }

    [Fact]
    public void Table_UnitRemoved_ServesNoLonger()
    {
        SmallShop shop = Shop(("A", Day));
        shop.Units.Add(new UnitRow("u") { RemovedOn = Day.AddDays(50) });
        using Database database = shop.Build(ResultModels.Rates, End);
        Assert.Equal(49 / 365.25, Single(PartServiceRates.Table(database, Small), "A").Exposure, 1e-12);
    }

    [Fact]
    public void Table_SupplierNotTold_IsUnknownAndNotShrunk()
    {
        using Database database = Shop((null, Day)).Build(ResultModels.Rates, End);
        FailureRate rate = Single(PartServiceRates.Table(database, new RateOptions()), "unknown");
        Assert.Null(rate.Shrunk);
        Assert.Equal("too few: 2.0 of 10 part-years", rate.Missing);
    }

    private static FailureRate Single(IReadOnlyList<FailureRate> rates, string supplier) => rates.Single(r => r.Supplier == supplier);

    private static SmallShop Shop(params (string? Supplier, DateOnly Day)[] fitted) => new()
    {
        Jobs = [.. fitted.Select((f, i) => new JobRow($"J{i}", f.Day) { ClosedOn = f.Day, UnitId = "u", MainComponent = "drain_pump" })],
        Parts = [.. fitted.Select((f, i) => new JobPartRow($"J{i}", 1, "P1", "drain_pump") { Supplier = f.Supplier })],
    };
}
