using PartsSignal.Analysis.VanPlan.Loads;

namespace PartsSignal.Analysis.VanPlan.Replay;

/// <summary>What the replay of past quarters came to.</summary>
/// <param name="Rows">A row per quarter, van and policy.</param>
/// <param name="NotRepaired">Jobs left out: declined or not worth it.</param>
/// <param name="NotTold">Jobs left out: parts not known.</param>
/// <param name="Plans">The plans that were replayed, per quarter.</param>
public sealed record ReplayEvidence(
    IReadOnlyList<ReplayRow> Rows, int NotRepaired, int NotTold, IReadOnlyList<IReadOnlyList<PlannedVan>> Plans);

/// <summary>
/// Goes back quarter by quarter, plans from what was known the evening before, and replays the quarter's jobs on the
/// plan and on the plain rules with the same money, and on the best load in hindsight.
/// </summary>
public static class RollingReplay
{
    private const int LeastHistoryDays = 180;

    /// <summary>First days of the quarters to replay: whole ones, oldest first, each after half a year of log at least.</summary>
    public static IReadOnlyList<DateOnly> Quarters(ShopData data, int most)
    {
        if (data.Jobs.Count == 0)
        {
            return [];
        }

        DateOnly first = data.Jobs[0].OpenedOn.AddDays(LeastHistoryDays);
        DateOnly end = data.AsOf.AddDays(1);
        DateOnly start = new DateOnly(end.Year, (((end.Month - 1) / 3) * 3) + 1, 1).AddMonths(-3);
        var quarters = new List<DateOnly>();
        for (; quarters.Count < most && start >= first; start = start.AddMonths(-3))
        {
            quarters.Insert(0, start);
        }

        return quarters;
    }

    /// <summary>Reads what the replay asks of the store: its quarters run side by side, and the store has one reader.</summary>
    /// <param name="data">The shop.</param>
    /// <param name="options">How vans are planned.</param>
    public static void Prepare(ShopData data, VanPlanOptions options)
    {
        data.NumbersOn(data.AsOf);
        foreach (DateOnly from in Quarters(data, options.ReplayQuarters))
        {
            data.NumbersOn(from.AddDays(-1));
        }
    }

    /// <summary>Runs it. After <see cref="Prepare"/> it leaves the store alone and may run beside others that read it.</summary>
    /// <param name="data">The shop.</param>
    /// <param name="views">The shop as known on a day.</param>
    /// <param name="options">How vans are planned.</param>
    public static ReplayEvidence Run(ShopData data, ShopViews views, VanPlanOptions options)
    {
        IReadOnlyDictionary<string, string> today = data.NumbersOn(data.AsOf);
        IReadOnlyList<DateOnly> quarters = Quarters(data, options.ReplayQuarters);
        Prepare(data, options);
        var replayed = new ReplayEvidence[quarters.Count];
        Parallel.For(0, replayed.Length, q =>
            replayed[q] = Quarter(data, views, options, quarters[q], q == replayed.Length - 1 ? data.Counts : [], today));
        return new ReplayEvidence(
            [.. replayed.SelectMany(r => r.Rows)], replayed.Sum(r => r.NotRepaired), replayed.Sum(r => r.NotTold), [.. replayed.SelectMany(r => r.Plans)]);
    }

    private static ReplayEvidence Quarter(
        ShopData data, ShopViews views, VanPlanOptions options, DateOnly from, IReadOnlyList<ShopCount> counts, IReadOnlyDictionary<string, string> today)
    {
        ShopView view = views.Before(from);
        IReadOnlyList<PlannedVan> plans = VanPlanner.Plan(view, options, LoadEffort.Quick);
        var rows = new List<ReplayRow>();
        (int notRepaired, int notTold) = (0, 0);
        for (int van = 0; van < plans.Count; van++)
        {
            PlannedVan planned = plans[van];
            var money = new LoadLimits(planned.Plan.CostCents, planned.Van.Space);
            int[] used = BaselineStock.MostUsed(view, van, options, money);
            int[] perCost = BaselineStock.MostUsedPerCost(view, van, options, money);
            int[] poisson = BaselineStock.PoissonGreedy(view, van, options, money);
            ShopCount[] counted = [.. counts.Where(c => c.Van == planned.Van.Van)];
            string[] held = [.. Held(view, today, planned.Target, used, perCost, poisson), .. counted.Select(c => c.PartNumber)];
            TestQuarter test = TestQuarter.Create(data, views.Facts, planned.Van.Van, from, from.AddMonths(3), options, held);
            var judge = new QuarterJudge(test, options, planned.Van.Van);
            rows.Add(judge.Row(ReplayPolicy.Plan, test.Translate(planned.Target, view, today)));
            rows.Add(judge.Row(ReplayPolicy.MostUsed, test.Translate(used, view, today)));
            rows.Add(judge.Row(ReplayPolicy.MostUsedPerCost, test.Translate(perCost, view, today)));
            rows.Add(judge.Row(ReplayPolicy.PoissonGreedy, test.Translate(poisson, view, today)));
            rows.Add(judge.Row(ReplayPolicy.Hindsight, [.. test.Hindsight(options, money).Quantities]));
            if (counted.Length > 0)
            {
                rows.Add(judge.Row(ReplayPolicy.Counted, Counted(test, counted)));
            }

            notRepaired += test.NotRepaired;
            notTold += test.NotTold;
        }

        return new ReplayEvidence(rows, notRepaired, notTold, [plans]);
    }

    private static IEnumerable<string> Held(ShopView view, IReadOnlyDictionary<string, string> today, params IReadOnlyList<int>[] loads) =>
        Enumerable.Range(0, view.Parts.Count)
            .Where(p => loads.Any(k => k[p] > 0))
            .Select(p => today.GetValueOrDefault(view.Parts[p].Number, view.Parts[p].Number));

    private static int[] Counted(TestQuarter test, ShopCount[] counted)
    {
        int[] load = new int[test.Parts.Count];
        foreach (ShopCount count in counted)
        {
            load[test.Index[count.PartNumber]] += count.OnHand;
        }

        return load;
    }
}

/// <summary>How one policy did on one van in one quarter it had not seen.</summary>
/// <param name="Quarter">For example 2026Q3.</param>
/// <param name="Van">The van.</param>
/// <param name="Policy">How it was stocked.</param>
/// <param name="Jobs">Jobs replayed.</param>
/// <param name="Finished">Of these finished at the first visit.</param>
/// <param name="Money">Money tied up.</param>
/// <param name="StaleStock">Money in pieces nobody asked for in the quarter.</param>
/// <param name="Weeks">Per week from the first day: jobs and jobs finished.</param>
public sealed record ReplayRow(
    string Quarter, string Van, ReplayPolicy Policy, int Jobs, int Finished, decimal Money, decimal StaleStock,
    IReadOnlyList<(int Week, int Jobs, int Finished)> Weeks)
{
    /// <summary>The same of jobs that need two or more different parts.</summary>
    public IReadOnlyList<(int Week, int Jobs, int Finished)> PartSets { get; init; } = [];
}

/// <summary>A way to stock a van, judged by replay.</summary>
public enum ReplayPolicy
{
    /// <summary>The plan made from what was known before the quarter.</summary>
    Plan,

    /// <summary>Most used parts first.</summary>
    MostUsed,

    /// <summary>Most used per money first.</summary>
    MostUsedPerCost,

    /// <summary>The piece whose chance to be asked for is highest for its price, next and next.</summary>
    PoissonGreedy,

    /// <summary>The best load for the very jobs that came: a ceiling no plan can know.</summary>
    Hindsight,

    /// <summary>What was counted on the van, at the end of the data; its money is its own.</summary>
    Counted,
}

/// <summary>How much of the way from a plain rule to hindsight a plan goes.</summary>
internal static class GapShare
{
    /// <summary>(plan - plain) / (hindsight - plain); null when hindsight is no better than the plain rule. Below 0 when the plan is worse than plain.</summary>
    public static double? From(double plan, double plain, double hindsight) =>
        hindsight - plain > 1e-12 ? (plan - plain) / (hindsight - plain) : null;
}
