using System.Globalization;
using PartsSignal.Analysis.AgeCurves;
using PartsSignal.Analysis.Rates;
using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Tests.Fixtures;

namespace PartsSignal.Analysis.Tests.Rates;

/// <summary>Every interval of the published tables, thin groups included, on shops where families differ and a good deal is missing.</summary>
public sealed class RoughWorldTests(ITestOutputHelper output)
{
    private const int Worlds = 100;

    // Bounded by none and all of the jobs that do not tell their machine, so that they hold the truth more often.
    private static readonly string[] Bounded =
    [
        "register rate by type", "register rate by family", "register rate by age", "shrunk register rate by family", "shrunk register rate by family_age",
        "rate of units seen by type", "rate of units seen by family", "shrunk rate of units seen by family", "repairs_per_unit", "age_curve_points", "next_year_risk",
    ];

    [SlowFact]
    public void Intervals_FamiliesThatDifferAsGamma_HoldWhatReachesThisShop() => Judge(evenSpread: false);

    [SlowFact]
    public void Intervals_FamiliesThatDifferEvenly_HoldWhatReachesThisShop() => Judge(evenSpread: true);

    private void Judge(bool evenSpread)
    {
        var tally = new CoverageTally();
        for (int seed = 1; seed <= Worlds; seed++)
        {
            var world = new RoughWorld(WorldSeed.Of(seed), evenSpread);
            using Database database = world.Shop.Build([.. ResultModels.Rates, .. ResultModels.Curves], RoughWorld.Last);
            RateCounts counts = RateCounts.Read(database);
            foreach (FailureRate rate in FailureRateTable.Create(counts, new RateOptions()).Where(r => r.SubjectKind == RateSubject.Component && r.Estimate is not null))
            {
                Rate(tally, world, counts, rate);
            }

            foreach (FamilyMix mix in FamilyMix.Table(counts, new RateOptions()).Where(m => m.ApplianceType == "dryer" && m.Calls >= 10))
            {
                tally.Add("family_mix share", world.Share[(mix.ModelFamily, mix.Component)], mix.ShareLower, mix.ShareUpper);
            }

            Curves(tally, world, database);
        }

        output.WriteLine($"{(evenSpread ? "even" : "gamma")}: {tally.Report}");
        tally.Between(0.93, 0.97, but: Bounded, highestOfThose: 1);
    }

    private static void Rate(CoverageTally tally, RoughWorld world, RateCounts counts, FailureRate rate)
    {
        if (rate is { Basis: RateBasis.RegisterUnitYears, Grouping: "type" or "age" or "family" or "family_age" })
        {
            double truth = RateTruth.OfRegister(counts, rate, world.Rate);

            // by family and age only what happened has a row, so that only its shrunk figure speaks for the cell
            if (rate.Grouping != "family_age")
            {
                tally.Add($"register rate by {rate.Grouping}", truth, rate.Lower, rate.Upper);
            }

            if (rate.ModelFamily is not null)
            {
                tally.Add($"shrunk register rate by {rate.Grouping}", truth, rate.ShrunkLower, rate.ShrunkUpper);
            }
        }
        else if (rate is { Basis: RateBasis.SeenUnitYears, Grouping: "type" or "family" })
        {
            double truth = RateTruth.OfUnitsSeen(world.Expected, rate);
            tally.Add($"rate of units seen by {rate.Grouping}", truth, rate.Lower, rate.Upper);
            if (rate.ModelFamily is not null)
            {
                tally.Add("shrunk rate of units seen by family", truth, rate.ShrunkLower, rate.ShrunkUpper);
            }
        }
        else if (rate is { Basis: RateBasis.ShareOfCalls, Grouping: "family", ApplianceType: "dryer" })
        {
            double truth = world.Share[(rate.ModelFamily!, rate.Subject)];
            tally.Add("share by family", truth, rate.Lower, rate.Upper);
            tally.Add("shrunk share by family", truth, rate.ShrunkLower, rate.ShrunkUpper);
        }
    }

    private static void Curves(CoverageTally tally, RoughWorld world, Database database)
    {
        foreach (RepairsPerUnit row in RepairsPerUnit.Table(database).Where(r => r.ModelFamily != "all" && r.AgeYears is 3 or 6 or 9))
        {
            double from = Start(row.Condition);
            tally.Add("repairs_per_unit", RoughWorld.Components.Sum(c => world.Failures(row.ModelFamily, c, from, row.AgeYears)), row.Lower, row.Upper);
        }

        foreach (AgeCurvePoint point in AgeCurveTables.Create(database).Points
            .Where(p => p is { Basis: CurveBasis.Register, Lower: not null } && p.ModelFamily != "all" && p.AgeYears is 3 or 6 or 9 && p.ShareFailed > 0))
        {
            tally.Add("age_curve_points", 1 - Math.Exp(-world.Failures(point.ModelFamily, point.Component, Start(point.Condition), point.AgeYears)), point.Lower, point.Upper);
        }

        foreach (NextYearRisk risk in NextYearRiskTable.Create(database).Where(r => r is { Basis: CurveBasis.Register, Chance: not null, AgeYears: 2 or 5 or 9 }))
        {
            if (risk.ModelFamily != "all")
            {
                tally.Add("next_year_risk", 1 - Math.Exp(-world.Failures(risk.ModelFamily, risk.Component, risk.AgeYears, risk.AgeYears + 1)), risk.Lower, risk.Upper);
            }
        }
    }

    // "given that it reached 2.25 years", "counted from 1.5 years of age"
    private static double Start(string? condition) =>
        condition is null ? 0 : double.Parse(condition.Split(' ').First(w => char.IsDigit(w[0])), CultureInfo.InvariantCulture);
}
