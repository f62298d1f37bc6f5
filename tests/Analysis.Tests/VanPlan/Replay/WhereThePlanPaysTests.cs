using PartsSignal.Analysis.Statistics;
using PartsSignal.Analysis.VanPlan;
using PartsSignal.Analysis.VanPlan.Replay;
using PartsSignal.Analysis.Vocabulary;

namespace PartsSignal.Analysis.Tests.VanPlan.Replay;

/// <summary>Shops in which one thing is so: where the plan finishes more jobs than the best simple rule for the same money, by replay.</summary>
public sealed class WhereThePlanPaysTests(ITestOutputHelper output)
{
    private static readonly DateOnly Start = new(2021, 1, 1);
    private static readonly DateOnly End = new(2026, 6, 30);

    // Half of the jobs need a cheap part together with a dear one. A rule that looks at pieces buys the cheap halves.
    [SlowFact]
    public void PartSets_PlanBeatsEveryRuleThatLooksAtPieces()
    {
        EvidenceRow plan = Total(Replay(Shop(31, (random, _) => random.Next(2) == 0 ? Set(Skewed(random, 12)) : [20 + Skewed(random, 12)]), Options()));
        Say("part sets", plan);
        Assert.True(plan.LeadBestLower > 0.01);
    }

    // Some parts take ten times the space of others, and space runs out before money.
    [SlowFact]
    public void Space_PlanBeatsEveryRuleThatLooksAtMoney()
    {
        EvidenceRow plan = Total(Replay(Shop(32, (random, _) => [Skewed(random, 32)], part => part % 3 == 0 ? 10 : 1), Options(budget: 900, space: 30)));
        Say("space", plan);
        Assert.True(plan.LeadBestLower > 0.01);
    }

    // Cooling in summer, drying in winter: what a season asks for is known from earlier years.
    [SlowFact]
    public void Seasons_PlanThatKnowsThemBeatsTheSamePlanWithoutThem()
    {
        ShopData data = Shop(33, (random, day) => [(random.NextDouble() < (day.Month is >= 5 and <= 9 ? 0.85 : 0.15) ? 0 : 16) + Skewed(random, 16)]);
        VanPlanOptions with = Options(), without = with with { Demand = with.Demand with { SeasonYears = 99 } };
        Estimate lead = Lead(Replay(data, with), Replay(data, without));
        output.WriteLine($"seasons: {lead.Value:0.000} ({lead.Lower:0.000} to {lead.Upper:0.000}) over the same plan without them");
        Assert.True(lead.Lower > 0.005);
    }

    // One part a job, no season, money alone: there is nothing that a greedy rule does not see.
    [SlowFact]
    public void SinglePartsOfOneSize_PlanGainsNextToNothing()
    {
        EvidenceRow plan = Total(Replay(Shop(34, (random, _) => [Skewed(random, 32)]), Options()));
        Say("nothing of these", plan);
        Assert.InRange(plan.LeadBest!.Value, -0.02, 0.02);
    }

    private void Say(string what, EvidenceRow plan) => output.WriteLine(
        $"{what}: {plan.LeadBest:0.000} ({plan.LeadBestLower:0.000} to {plan.LeadBestUpper:0.000}) over {plan.BestRule}, sets {plan.SetLead:0.000}, finished {plan.Completion:0.000}");

    private static VanPlanOptions Options(decimal budget = 450, double space = 1000) => new()
    {
        Vans = [new VanLimits("1", budget, space)],
        ReplayQuarters = 10,
        Objective = PlanObjective.Completions,
    };

    private static ReplayEvidence Replay(ShopData data, VanPlanOptions options) => RollingReplay.Run(data, new ShopViews(data, options), options);

    private static EvidenceRow Total(ReplayEvidence evidence) =>
        EvidenceRow.From(evidence.Rows, new VanPlanOptions()).Single(r => r is { Quarter: "all", Van: "all", Policy: ReplayPolicy.Plan });

    private static Estimate Lead(ReplayEvidence plan, ReplayEvidence other)
    {
        (double, double)[] Weeks(ReplayEvidence of) => [.. of.Rows.Where(r => r.Policy == ReplayPolicy.Plan)
            .SelectMany(r => r.Weeks.Select(w => (r.Quarter, w.Week, w.Jobs, w.Finished)))
            .OrderBy(w => w.Quarter, StringComparer.Ordinal).ThenBy(w => w.Week).Select(w => ((double)w.Finished, (double)w.Jobs))];
        (double, double)[] weeks = Weeks(plan);
        return new CompletionIntervals(weeks.Length, 1000, 1).Lead(weeks, Weeks(other));
    }

    // A few parts make up most of the use.
    private static int Skewed(Random random, int parts) => (int)(parts * random.NextDouble() * random.NextDouble());

    // The cheap part of a set stands twelve places before its dear one.
    private static int[] Set(int which) => [32 + which, 44 + which];

    private static ShopData Shop(int seed, Func<Random, DateOnly, int[]> needs, Func<int, double>? space = null)
    {
        var random = new Random(seed);
        const int parts = 56, jobs = 6000;
        int days = End.DayNumber - Start.DayNumber;
        return new ShopData
        {
            AsOf = End,
            Jobs = [.. Enumerable.Range(0, jobs).Select(i =>
            {
                DateOnly day = Start.AddDays((int)((long)days * i / jobs));
                int[] needed = needs(random, day);
                return new ShopJob(
                    $"J{i:0000}", "1", day, day, needed[0] < 16 ? "refrigerator" : "dryer", "F", Outcome.FixedWithPart,
                    [.. needed.Select(p => new ShopPartLine(Number(p), Number(p), 1))]);
            })],
            Parts = [.. Enumerable.Range(0, parts).Select(p => new ShopPart(Number(p), Number(p), null, $"c{p}", Price(p), "small", space?.Invoke(p) ?? 1, 0, "First"))],
            NumbersOn = _ => new Dictionary<string, string>(),
        };
    }

    private static string Number(int part) => $"P{part:00}";

    private static decimal Price(int part) => part >= 44 ? 90 + part : part >= 32 ? 6 : 25 + (7 * (part % 5));
}
