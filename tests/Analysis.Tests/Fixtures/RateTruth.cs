using PartsSignal.Analysis.Rates;

namespace PartsSignal.Analysis.Tests.Fixtures;

/// <summary>What a published rate of a simulated shop would be without chance.</summary>
internal static class RateTruth
{
    /// <summary>The register's rate per 100 unit-years: true rates weighted by the days that units spent in each cell of family and age.</summary>
    /// <param name="counts">Exposure by cell.</param>
    /// <param name="rate">The published rate; a family or age band it does not name counts whole.</param>
    /// <param name="truth">True rate per unit-day of a family, component and age band.</param>
    public static double OfRegister(RateCounts counts, FailureRate rate, Func<string, string, string, double> truth)
    {
        double expected = 0, days = 0;
        foreach (GroupSize cell in counts.Groups.Where(g => g.Group is { Basis: RateBasis.RegisterUnitYears, Grouping: "family_age" }
            && (rate.ModelFamily ?? g.Group.ModelFamily) == g.Group.ModelFamily && (rate.AgeBand ?? g.Group.AgeBand) == g.Group.AgeBand))
        {
            expected += cell.UnitDays * truth(cell.Group.ModelFamily!, rate.Subject, cell.Group.AgeBand!);
            days += cell.UnitDays;
        }

        return 100 * expected / days;
    }

    /// <summary>The rate per 100 unit-years of units seen: calls expected to come back to this shop, over the published exposure.</summary>
    /// <param name="expected">Expected calls by family and component.</param>
    /// <param name="rate">The published rate; a family it does not name counts whole.</param>
    public static double OfUnitsSeen(IEnumerable<KeyValuePair<(string Family, string Component), double>> expected, FailureRate rate) =>
        100 * expected.Where(e => e.Key.Component == rate.Subject && (rate.ModelFamily ?? e.Key.Family) == e.Key.Family).Sum(e => e.Value) / rate.Exposure;
}
