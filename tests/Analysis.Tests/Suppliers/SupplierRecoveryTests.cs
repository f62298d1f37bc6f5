using PartsSignal.Analysis.Statistics.Shrinkage;
using PartsSignal.Analysis.Suppliers;

namespace PartsSignal.Analysis.Tests.Suppliers;

public class SupplierRecoveryTests
{
    private const int Worlds = 200;
    private const int Components = 15;
    private const int PartsEach = 250;
    private const double Usual = 0.02;

    [SlowFact]
    public void Of_OneSupplierOfOneComponentFailsSixTimesAsOften_IsFoundAndFewOthersAreNamed()
    {
        int found = 0, named = 0, wrong = 0;
        for (int seed = 1; seed <= Worlds; seed++)
        {
            var random = new Random(seed);
            IReadOnlyList<SupplierPart> table = SupplierQualityTable.Create([.. Counts(random, bad: 6 * Usual)], new EffectGate());
            SupplierPart[] stands = [.. table.Where(r => r.StandsOut)];
            found += stands.Any(r => r is { Supplier: "B", Component: "c00" }) ? 1 : 0;
            named += stands.Length;
            wrong += stands.Count(r => r is not { Supplier: "B", Component: "c00" });
        }

        Assert.True(found >= 0.9 * Worlds, $"found in {found} of {Worlds} shops");
        Assert.True(wrong <= 0.1 * named, $"{wrong} of {named} named were wrong");
    }

    [SlowFact]
    public void Of_AllSuppliersAlike_NamesSomebodyInFewShops()
    {
        int alarms = 0;
        for (int seed = 1; seed <= Worlds; seed++)
        {
            var random = new Random(1000 + seed);
            alarms += SupplierQualityTable.Create([.. Counts(random, bad: Usual)], new EffectGate()).Any(r => r.StandsOut) ? 1 : 0;
        }

        Assert.True(alarms <= 0.1 * Worlds, $"somebody named in {alarms} of {Worlds} shops");
    }

    private static IEnumerable<SupplierCount> Counts(Random random, double bad)
    {
        foreach (string supplier in new[] { "A", "B" })
        {
            for (int c = 0; c < Components; c++)
            {
                double chance = supplier == "B" && c == 0 ? bad : Usual;
                long failed = Enumerable.Range(0, PartsEach).Count(_ => random.NextDouble() < chance);
                yield return new SupplierCount(supplier, $"c{c:00}", 0, 0, 0, PartsEach, failed);
            }
        }
    }
}
