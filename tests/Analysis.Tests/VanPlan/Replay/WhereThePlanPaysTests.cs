using PartsSignal.Analysis.CheckOrder;
using PartsSignal.Analysis.Prediction;
using PartsSignal.Analysis.Prediction.Answers;
using PartsSignal.Analysis.Statistics;
using PartsSignal.Analysis.VanPlan;
using PartsSignal.Analysis.VanPlan.Loads;
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

    // One call in three is about a dear part that no load holds; what it needs was said beforehand, as odds.
    [SlowFact]
    public void BookedCalls_TakingAlongWhatItsOddsAskFor_BeatsTakingNothingAndTakingAll()
    {
        var told = new Dictionary<string, (int Part, double Chance)>();
        ShopData data = Shop(35, (random, _) => [Skewed(random, 32)]);
        var random = new Random(36);
        data = data with
        {
            Jobs = [.. data.Jobs.Select((job, i) =>
            {
                if (i % 3 != 0)
                {
                    return job;
                }

                int part = 44 + random.Next(12);
                double chance = random.NextDouble();
                told[job.JobId] = (part, chance);
                return random.NextDouble() < chance
                    ? job with { Lines = [new ShopPartLine(Number(part), Number(part), 1)] }
                    : job with { Outcome = Outcome.FixedWithoutPart, Lines = [] };
            })],
        };
        BookedDays nothing = Booked(data, told, (_, _) => false), rule = Booked(data, told, Pays), all = Booked(data, told, (_, _) => true);
        Estimate lead = new CompletionIntervals(rule.Weeks.Count, 1000, 1).Lead(rule.Weeks, nothing.Weeks);
        output.WriteLine($"booked calls: {lead.Value:0.000} ({lead.Lower:0.000} to {lead.Upper:0.000}) more finished; cost {rule.Cost:0}, taking nothing {nothing.Cost:0}, taking all {all.Cost:0}");
        Assert.True(lead.Lower > 0.05);
        Assert.True(rule.Cost < 0.95 * nothing.Cost && rule.Cost < 0.98 * all.Cost);
    }

    // From 2024 on the vans serve each other's area: what one van no longer needs is what the other lacks.
    [SlowFact]
    public void Moves_VansWhoseAreasChange_BuyLessForTheSameLoadsAndOthersNextToNothing()
    {
        Purchases change = Buy(TwoVans(37, swaps: true, returnableDays: 0)), steady = Buy(TwoVans(37, swaps: false, returnableDays: 0));
        output.WriteLine($"moves: bought {change.Together:0} instead of {change.Apart:0} where areas change, {steady.Together:0} instead of {steady.Apart:0} where they stay");
        Assert.True(change.Together < 0.7m * change.Apart);
        Assert.True(steady.Apart - steady.Together < 0.5m * (change.Apart - change.Together));
    }

    // Plans of every quarter: what was bought in the one before can go back only if the supplier still takes it.
    [SlowFact]
    public void Returns_PlannedWhileTheWindowIsOpen_BringMoneyBackAndLaterNone()
    {
        Purchases open = Buy(TwoVans(38, swaps: true, returnableDays: 120)), lapsed = Buy(TwoVans(38, swaps: true, returnableDays: 60));
        output.WriteLine($"returns: {open.SentBack:0} of {open.SentBack + open.TakenOff:0} that left the vans went back in 120 days, {lapsed.SentBack:0} of {lapsed.SentBack + lapsed.TakenOff:0} in 60");
        Assert.True(open.SentBack > 0);
        Assert.Equal(0, lapsed.SentBack);
        Assert.Equal(open.SentBack + open.TakenOff, lapsed.TakenOff);
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

    private static bool Pays(int part, double chance) =>
        chance >= BringRule.Threshold(ForNothing(part), (double)new AnswerOptions().SecondVisitCost);

    // What a piece costs that was taken along and not needed.
    private static double ForNothing(int part) => (double)new AnswerOptions().HandlingCost + ((double)Price(part) * new AnswerOptions().LostShare);

    private sealed record BookedDays(IReadOnlyList<(double Finished, double Jobs)> Weeks, double Cost);

    /// <summary>Replays the quarters with the load of each and, day by day, what is taken along for the calls of that day.</summary>
    private static BookedDays Booked(ShopData data, Dictionary<string, (int Part, double Chance)> told, Func<int, double, bool> bring)
    {
        VanPlanOptions options = Options();
        var views = new ShopViews(data, options);
        var weeks = new List<(double Finished, double Jobs)>();
        double cost = 0;
        foreach (DateOnly from in RollingReplay.Quarters(data, options.ReplayQuarters))
        {
            DateOnly to = from.AddMonths(3);
            ShopView view = views.Before(from, told.Values.Select(t => Number(t.Part)));
            IReadOnlyList<PlannedVan> plans = VanPlanner.Plan(view, options, LoadEffort.Quick);
            ShopJob[] jobs = [.. data.Jobs.Where(j => j.OpenedOn >= from && j.OpenedOn < to)];
            TestQuarter test = TestQuarter.Create(data, views.Facts, "1", from, to, options, view.Parts.Select(p => p.Number));
            var replay = new FirstComeReplay(test.Stream, test.Restock(options), ConsumeRule.TakeWhatIsThere);
            replay.Run(test.Translate(plans[0].Target, view, new Dictionary<string, string>()));
            bool[] done = replay.Done.ToArray();
            Assert.Equal(jobs.Length, done.Length);
            var taken = new Dictionary<string, int>();
            foreach (var day in jobs.Where(j => told.ContainsKey(j.JobId)).GroupBy(j => j.OpenedOn))
            {
                BookedNeed[] needs = [.. day.Select(j => (j.JobId, Told: told[j.JobId])).Select(j => new BookedNeed(
                    j.JobId, "1", 1 - j.Told.Chance, [new BookedPart($"c{j.Told.Part}", Number(j.Told.Part), 1, j.Told.Chance, bring(j.Told.Part, j.Told.Chance))]))];
                BookedCall[] calls = [.. day.Select(j => new BookedCall(j.JobId, j.OpenedOn, "1", Outcome.Unknown, new Call()))];
                foreach (BookedRow row in BookedRow.From(new BookedJobs(calls, needs, ""), plans, _ => null))
                {
                    taken[row.JobId] = row.TakeAlong;
                }
            }

            for (int j = 0; j < jobs.Length; j++)
            {
                bool needsPart = jobs[j].Lines.Count > 0, took = taken.GetValueOrDefault(jobs[j].JobId) > 0;
                done[j] |= took && needsPart;
                cost += (done[j] ? 0 : (double)options.SecondVisitCost) + (took && !needsPart ? ForNothing(told[jobs[j].JobId].Part) : 0);
            }

            weeks.AddRange(jobs.Select((job, j) => (Week: (job.OpenedOn.DayNumber - from.DayNumber) / 7, Done: done[j]))
                .GroupBy(j => j.Week).OrderBy(w => w.Key).Select(w => ((double)w.Count(j => j.Done), (double)w.Count())));
        }

        return new BookedDays(weeks, cost);
    }

    private sealed record Purchases(decimal Together, decimal Apart, decimal SentBack, decimal TakenOff);

    /// <summary>Plans quarter by quarter, each from the loads of the one before: what is bought by both vans together, and by each alone.</summary>
    private static Purchases Buy(ShopData data)
    {
        VanPlanOptions options = Options() with { Vans = [new VanLimits("1", 450, 1000), new VanLimits("2", 450, 1000)] };
        var views = new ShopViews(data, options);
        IReadOnlyList<ShopCount> aboard = [];
        IReadOnlyList<ShopOrder> bought = [];
        decimal together = 0, apart = 0, back = 0, off = 0;
        foreach (DateOnly from in RollingReplay.Quarters(data, options.ReplayQuarters))
        {
            IReadOnlyList<PlannedVan> plans = VanPlanner.Plan(views.Before(from), options, LoadEffort.Quick);
            ShopData then = data with { AsOf = from.AddDays(-1), Counts = aboard, Orders = bought };
            IReadOnlyList<VanChange> changes = ChangePlanner.Changes(then, plans);
            if (aboard.Count > 0)
            {
                together += Money(changes, ChangeAction.Add);
                apart += plans.Sum(p => Money(ChangePlanner.Changes(then, [p]), ChangeAction.Add));
                back += Money(changes, ChangeAction.SendBack);
                off += Money(changes, ChangeAction.TakeOff);
            }

            bought = [.. changes.Where(c => c.Action == ChangeAction.Add).Select(c => new ShopOrder("First", from, from, c.PartNumber, c.Quantity, null, null))];
            aboard = [.. plans.SelectMany(p => p.Target.Select((pieces, i) => new ShopCount(p.Van.Van, p.View.Parts[i].Number, p.View.Parts[i].Number, pieces, from))).Where(c => c.OnHand > 0)];
        }

        return new Purchases(together, apart, back, off);
    }

    private static decimal Money(IReadOnlyList<VanChange> changes, ChangeAction action) => changes.Where(c => c.Action == action).Sum(c => c.Money);

    // Each area needs sixteen parts of its own.
    private static ShopData TwoVans(int seed, bool swaps, int returnableDays)
    {
        ShopData data = Shop(seed, (random, _) => [(16 * random.Next(2)) + Skewed(random, 16)]);
        return data with
        {
            Jobs = [.. data.Jobs.Select(j => j with { Van = (string.CompareOrdinal(j.Lines[0].PartNumber, Number(16)) < 0) != (swaps && j.OpenedOn.Year >= 2024) ? "1" : "2" })],
            Parts = [.. data.Parts.Select(p => p with { ReturnableDays = returnableDays })],
        };
    }

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
