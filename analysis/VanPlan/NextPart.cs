using PartsSignal.Analysis.VanPlan.Loads;

namespace PartsSignal.Analysis.VanPlan;

/// <summary>A part just beyond the plan, or just within it.</summary>
/// <param name="Van">The van.</param>
/// <param name="Rank">Order in its list, from 1.</param>
/// <param name="Move">add: what more money would buy first; drop: what less money would cost first.</param>
/// <param name="PartNumber">Current number.</param>
/// <param name="Description">Text, or null if there is none.</param>
/// <param name="Quantity">Pieces.</param>
/// <param name="Money">Price of the pieces.</param>
/// <param name="JobsPerYear">Jobs a year finished more (add) or fewer (drop) at the first visit, with the moves ranked before it made.</param>
public sealed record NextPart(string Van, int Rank, string Move, string PartNumber, string? Description, int Quantity, decimal Money, double JobsPerYear)
{
    /// <summary>The next parts to add and to drop.</summary>
    public static IReadOnlyList<NextPart> Find(PlannedVan planned, int most) => [.. Adds(planned, most), .. Drops(planned, most)];

    private static IEnumerable<NextPart> Adds(PlannedVan planned, int most)
    {
        LoadLimits limits = planned.Usual.Limits;
        LoadProblem wider = planned.Usual.Within(new LoadLimits(limits.BudgetCents + Math.Max(limits.BudgetCents, 50_000), Math.Max(limits.Space * 2, 50)));
        var state = new LoadState(wider);
        state.Load([.. planned.Target]);
        var fill = new GreedyLoad(wider);
        int rank = 0;
        while (rank < most)
        {
            int[] before = [.. state.Pieces];
            double worth = planned.Usual.Worth(before);
            if (!fill.Step(state))
            {
                yield break;
            }

            double jobs = (planned.Usual.Worth(state.Pieces) - worth) / planned.WorthPerJob;
            int[] changed = [.. Enumerable.Range(0, before.Length).Where(p => state.Pieces[p] > before[p])];
            rank++;
            foreach (int p in changed)
            {
                yield return Row(planned, rank, "add", p, state.Pieces[p] - before[p], jobs);
            }
        }
    }

    private static IEnumerable<NextPart> Drops(PlannedVan planned, int most)
    {
        var state = new LoadState(planned.Usual);
        state.Load([.. planned.Target]);
        for (int rank = 1; rank <= most && state.Pieces.Any(k => k > 0); rank++)
        {
            double worth = planned.Usual.Worth(state.Pieces);
            int part = Enumerable.Range(0, state.Pieces.Length)
                .Where(p => state.Pieces[p] > 0)
                .MinBy(p => state.LossOfLast(p) / Math.Max(planned.Usual.Parts[p].CostCents, 1));
            state.Remove(part);
            yield return Row(planned, rank, "drop", part, 1, (planned.Usual.Worth(state.Pieces) - worth) / planned.WorthPerJob);
        }
    }

    private static NextPart Row(PlannedVan planned, int rank, string move, int part, int pieces, double jobs)
    {
        StockPart p = planned.View.Parts[part];
        return new NextPart(planned.Van.Van, rank, move, p.Number, p.Description, pieces, pieces * p.Price, jobs);
    }
}
