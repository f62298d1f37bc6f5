using PartsSignal.Analysis.VanPlan;
using PartsSignal.Analysis.VanPlan.Loads;
using PartsSignal.Analysis.VanPlan.Replay;

namespace PartsSignal.SampleShop.Scoring;

/// <summary>A part set whose true rate is known.</summary>
/// <param name="Van">The van.</param>
/// <param name="Quarter">For example 2026Q3.</param>
/// <param name="Parts">Part numbers current at the end of the data, and pieces.</param>
/// <param name="JobsPerQuarter">True mean number of jobs.</param>
internal sealed record TrueSet(string Van, string Quarter, IReadOnlyList<(string Number, int Quantity)> Parts, double JobsPerQuarter);

/// <summary>Part jobs a year finished at the first visit under the true demand of one van and quarter, with the same money.</summary>
internal sealed record KnownDemandRow(string Quarter, string Van, double PlanFinished, double MostUsedFinished, double BestFinished);

/// <summary>Compares the plans of past quarters, under a known demand, with the plan that knows it.</summary>
internal static class KnownDemand
{
    /// <summary>One row per plan that the true sets cover.</summary>
    /// <param name="plans">Plans of past quarters, each for the quarter its view begins with.</param>
    /// <param name="sets">The truth.</param>
    /// <param name="today">Old numbers to those current at the end of the data.</param>
    /// <param name="facts">Prices and lead times.</param>
    /// <param name="options">How the vans were planned.</param>
    public static IReadOnlyList<KnownDemandRow> Compare(
        IEnumerable<IReadOnlyList<PlannedVan>> plans, IReadOnlyList<TrueSet> sets, IReadOnlyDictionary<string, string> today, StockPartFacts facts,
        VanPlanOptions options)
    {
        ILookup<(string, string), TrueSet> truth = sets.ToLookup(s => (s.Van, s.Quarter));
        return [.. plans.AsParallel().AsOrdered().SelectMany(vans => Quarter(vans, truth, today, facts, options))];
    }

    private static List<KnownDemandRow> Quarter(
        IReadOnlyList<PlannedVan> vans, ILookup<(string, string), TrueSet> truth, IReadOnlyDictionary<string, string> today, StockPartFacts facts,
        VanPlanOptions options)
    {
        var rows = new List<KnownDemandRow>();
        for (int v = 0; v < vans.Count; v++)
        {
            string quarter = QuarterJudge.QuarterName(vans[v].View.From);
            TrueSet[] known = [.. truth[(vans[v].Van.Van, quarter)]];
            if (known.Length > 0)
            {
                rows.Add(Row(vans[v], v, known, quarter, facts, options, today));
            }
        }

        return rows;
    }

    private static KnownDemandRow Row(
        PlannedVan planned, int van, TrueSet[] known, string quarter, StockPartFacts facts, VanPlanOptions options, IReadOnlyDictionary<string, string> today)
    {
        ShopView view = planned.View;
        var money = new LoadLimits(planned.Plan.CostCents, planned.Van.Space);
        int[] used = BaselineStock.MostUsed(view, van, options, money);
        string[] numbers = [.. known.SelectMany(s => s.Parts).Select(p => p.Number)
            .Concat(view.Parts.Select(p => today.GetValueOrDefault(p.Number, p.Number)))
            .Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];
        StockPart[] parts = [.. numbers.Select(n => facts.On(n, view.From, options.LeadDays))];
        var index = numbers.Select((n, i) => (n, i)).ToDictionary(x => x.n, x => x.i, StringComparer.Ordinal);
        var demand = new VanDemand(
            [.. known.Select(s => new PartSetRate(ShopViews.Needs(s.Parts, index), s.JobsPerQuarter / 91.31))],
            [.. parts.Select(_ => 1e6)], known.Sum(s => s.JobsPerQuarter));
        LoadPart[] kitParts = [.. parts.Select(p => new LoadPart(
            p.Number, p.PriceCents, p.Space, p.SizeClass is { } size && options.OffVanSizes.Contains(size) ? 0 : options.MostPieces))];
        var restock = new RestockRule(options.ReviewDays, [.. parts.Select(p => p.LeadDays)]);
        LoadProblem problem = LoadProblemBuilder.Build(kitParts, DemandLevels.Year(demand, restock, 1), money);
        int[] Today(IReadOnlyList<int> kit)
        {
            int[] all = new int[numbers.Length];
            for (int p = 0; p < kit.Count; p++)
            {
                all[index[today.GetValueOrDefault(view.Parts[p].Number, view.Parts[p].Number)]] += kit[p];
            }

            return all;
        }

        return new KnownDemandRow(
            quarter, planned.Van.Van, problem.Worth(Today(planned.Target)), problem.Worth(Today(used)),
            VanLoadPlanner.Plan(problem, LoadEffort.Quick).Value);
    }
}
