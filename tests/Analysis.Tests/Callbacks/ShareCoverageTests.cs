using PartsSignal.Analysis.Callbacks;
using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Statistics.Shrinkage;
using PartsSignal.Analysis.Suppliers;
using PartsSignal.Analysis.Tests.Fixtures;

namespace PartsSignal.Analysis.Tests.Callbacks;

/// <summary>Two hundred shops whose technicians and suppliers are known: what came back, and whose parts failed early.</summary>
public class ShareCoverageTests(ITestOutputHelper output)
{
    private const int Worlds = 200;
    private static readonly DateOnly Start = new(2022, 1, 1);
    private static readonly DateOnly End = new(2024, 12, 31);
    private static readonly string[] Components = ["drain_pump", "inlet_valve", "heater"];
    private static readonly string[] Suppliers = ["Aster", "Birk"];

    [SlowFact]
    public void CallbacksAndEarlyFailures_HoldTheTruth_InNinetyThreeToNinetySevenOfAHundred()
    {
        var tally = new CoverageTally();
        var exact = new CoverageTally();
        for (int seed = 1; seed <= Worlds; seed++)
        {
            var random = WorldSeed.Random(seed);
            double[] comesBack = [.. Enumerable.Range(0, 6).Select(_ => 0.03 + (0.12 * random.NextDouble()))];
            double[] fails = [.. Enumerable.Range(0, 6).Select(_ => 0.05 + (0.15 * random.NextDouble()))];
            double[] returned = [.. Suppliers.Select(_ => 0.02 + (0.1 * random.NextDouble()))];
            using Database database = Shop(random, comesBack, fails, returned).Build([.. ResultModels.Callbacks, .. ResultModels.Suppliers], End);
            foreach (CallbackShare share in CallbackShare.Table(database).Where(s => s is { Days: 30, Grouping: "technician", Member: not "unknown" }))
            {
                tally.Add("callbacks by technician", comesBack[share.Member[1] - '0'], share.Lower, share.Upper);
            }

            foreach (RepeatFailure part in RepeatFailure.Table(database).Where(r => r is { Component: not null, Supplier: "Aster" or "Birk", Stretch: "0-90" }))
            {
                tally.Add("repeat failures by supplier and component", fails[Cell(part.Supplier!, part.Component!)], part.Lower, part.Upper);
            }

            foreach (SupplierPart part in SupplierQualityTable.Create(SupplierCount.Read(database), new EffectGate()))
            {
                Judge(tally, exact, part, fails, returned);
            }
        }

        output.WriteLine($"{tally.Report}; exact, so at least 95 %: {exact.Report}");
        tally.Between(0.93, 0.97);
        exact.Between(0.95, 1);
    }

    private static void Judge(CoverageTally tally, CoverageTally exact, SupplierPart part, double[] fails, double[] returned)
    {
        if (part.Component is not { } component || !Components.Contains(component))
        {
            return;
        }

        double own = fails[Cell(part.Supplier, component)], others = fails[Cell(Suppliers.Single(s => s != part.Supplier), component)];
        tally.Add("returns by supplier and component", returned[Array.IndexOf(Suppliers, part.Supplier)], part.ReturnLower, part.ReturnUpper);
        tally.Add("early failures by supplier and component", own, part.FailedLower, part.FailedUpper);
        exact.Add("early failures over the others'", own / others, part.RatioLower, part.RatioUpper ?? double.MaxValue);
    }

    private static int Cell(string supplier, string component) =>
        (Array.IndexOf(Suppliers, supplier) * Components.Length) + Array.IndexOf(Components, component);

    // Repairs of the technicians are on units of their own, so that what comes back is theirs alone.
    private static SmallShop Shop(Random random, double[] comesBack, double[] fails, double[] returned)
    {
        var shop = new SmallShop();
        for (int t = 0; t < comesBack.Length; t++)
        {
            for (int i = 80 + random.Next(80); i > 0; i--)
            {
                string unit = $"t{t}-{i}";
                DateOnly day = Start.AddDays(random.Next(900));
                shop.Jobs.Add(Job(shop, unit, day) with { Technician = $"T{t}", Outcome = "fixed_without_part", MainComponent = "none" });
                if (random.NextDouble() < comesBack[t])
                {
                    shop.Jobs.Add(Job(shop, unit, day.AddDays(1 + random.Next(29))) with { Outcome = "declined" });
                }
            }
        }

        foreach (string supplier in Suppliers)
        {
            foreach (string component in Components)
            {
                Parts(random, shop, supplier, component, fails[Cell(supplier, component)], returned[Array.IndexOf(Suppliers, supplier)]);
            }
        }

        return shop;
    }

    private static void Parts(Random random, SmallShop shop, string supplier, string component, double fails, double returned)
    {
        for (int i = 60 + random.Next(90); i > 0; i--)
        {
            string unit = $"{supplier}-{component}-{i}";
            DateOnly day = Start.AddDays(random.Next(900));
            Fit(shop, unit, day, component, supplier);
            shop.Orders.Add(new PartOrderRow($"O{shop.Orders.Count}", 1, supplier, day.AddDays(-5), day)
            {
                Component = component,
                ReturnedQuantity = random.NextDouble() < returned ? 1 : 0,
            });
            if (random.NextDouble() < fails)
            {
                Fit(shop, unit, day.AddDays(1 + random.Next(89)), component, null);
            }
        }
    }

    private static void Fit(SmallShop shop, string unit, DateOnly day, string component, string? supplier)
    {
        JobRow job = Job(shop, unit, day) with { MainComponent = component };
        shop.Jobs.Add(job);
        shop.Parts.Add(new JobPartRow(job.JobId, 1, "P1", component) { Supplier = supplier });
    }

    private static JobRow Job(SmallShop shop, string unit, DateOnly day) =>
        new($"J{shop.Jobs.Count:00000}", day) { UnitId = unit, ClosedOn = day, ComplaintKind = "no_drain" };
}
