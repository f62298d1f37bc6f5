using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Statistics;
using PartsSignal.Analysis.Statistics.Shrinkage;

namespace PartsSignal.Analysis.AgeCurves;

/// <summary>
/// Rates by year of age of the whole type (<see cref="LocalRate"/>), times the family's own ratio to its type
/// at the same ages (observed over expected, gamma-Poisson shrunk: Clayton and Kaldor 1987), times what jobs that do not tell their machine add
/// (<see cref="UntoldFactor"/>).
/// </summary>
public static class NextYearRiskTable
{
    private const int Oldest = 25;

    /// <summary>Builds the table from age_exposure and age_events.</summary>
    public static IReadOnlyList<NextYearRisk> Create(Database database)
    {
        IReadOnlyList<AgeExposure> exposure = database.ReadTable<AgeExposure>("age_exposure");
        IReadOnlyList<AgeEvents> events = database.ReadTable<AgeEvents>("age_events");
        UntoldFactors untold = UntoldFactors.Read(database);
        var table = new List<NextYearRisk>();
        foreach (var group in events.GroupBy(e => (e.Basis, Type: e.ApplianceType, e.Component)).OrderBy(g => g.Key.Basis, StringComparer.Ordinal)
            .ThenBy(g => g.Key.Type, StringComparer.Ordinal).ThenBy(g => g.Key.Component, StringComparer.Ordinal))
        {
            var watched = new FamilyAges<double>(exposure.Where(x => x.Basis == group.Key.Basis && x.ApplianceType == group.Key.Type).Select(x => (x.ModelFamily, x.AgeYear, x.UnitYears)));
            var failed = new FamilyAges<long>(group.Select(e => (e.ModelFamily, e.AgeYear, e.Events)));
            table.AddRange(OfComponent(group.Key.Basis, group.Key.Type, group.Key.Component, watched, failed, untold.Of(group.Key.Basis, group.Key.Type, group.Key.Component)));
        }

        return table;
    }

    private sealed record AgeExposure(string Basis, string ApplianceType, string ModelFamily, int AgeYear, double UnitYears);

    private sealed record AgeEvents(string Basis, string ApplianceType, string ModelFamily, string Component, int AgeYear, long Events);

    private static IEnumerable<NextYearRisk> OfComponent(string basis, string type, string component, FamilyAges<double> watched, FamilyAges<long> failed, UntoldFactor untold)
    {
        (long Events, double Years)[] near = [.. Enumerable.Range(0, Oldest + 1).Select(a => (failed.Window(a), watched.Window(a)))];
        LocalRate?[] rates = [.. Enumerable.Range(0, Oldest + 1).Select(a => LocalRate.Fit(
            [.. LocalRate.Around(a).Select(d => (d, failed.At(a + d), watched.At(a + d)))]))];
        double Rate(int age) => rates[Math.Min(age, Oldest)]?.Rate ?? 0;
        string[] families = [.. watched.Families.Order(StringComparer.Ordinal)];
        CountGroup[] groups = [.. families.Select(f => new CountGroup(failed.Total(f), watched.Ages(f).Sum(a => Rate(a.Age) * a.Value)))];
        IReadOnlyList<Estimate> ratios = GammaPoissonShrinkage.Shrink(groups);
        long all = failed.Total();
        foreach ((string family, Estimate? ratio) in families.Select((f, i) => (f, (Estimate?)ratios[i])).Prepend((CurveKey.AllFamilies, null)))
        {
            bool whole = family == CurveKey.AllFamilies;
            for (int age = 0; age <= Oldest; age++)
            {
                if (near[age].Years <= 0 && near[age].Events == 0)
                {
                    continue;
                }

                double factor = whole ? 1 : ratio!.Value ?? 1;
                string? missing = all < NextYearRisk.FewestEvents ? $"fewer than {NextYearRisk.FewestEvents} failures"
                    : near[age].Years < NextYearRisk.FewestUnitYears ? "too few were watched at this age" : null;
                Estimate chance = missing is null ? Chance(rates[age]!, factor, ratio, untold) : Estimate.None(missing);
                yield return new NextYearRisk(
                    basis, type, family, component, age, chance.Value, chance.Lower, chance.Upper,
                    whole ? all : failed.Total(family), whole ? watched.Total() : watched.Total(family),
                    near[age].Events, near[age].Years, factor, chance.Missing);
            }
        }
    }

    private static Estimate Chance(LocalRate near, double factor, Estimate? ratio, UntoldFactor untold)
    {
        double family = ratio is { Lower: > 0, Upper: not null } ? Math.Log(ratio.Upper.Value / ratio.Lower.Value) / (2 * Interval95.Z) : 0;
        return NextYearRisk.FromRate(factor * near.Rate, Math.Sqrt((near.LogError * near.LogError) + (family * family)), untold);
    }
}
