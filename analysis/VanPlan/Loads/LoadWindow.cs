namespace PartsSignal.Analysis.VanPlan.Loads;

/// <summary>The problem that is left when some pieces are aboard for certain and others are kept off.</summary>
/// <param name="Problem">What is left to decide.</param>
/// <param name="Least">Pieces aboard for certain, by part.</param>
/// <param name="Base">Charges of those pieces, negative; add to a value of <paramref name="Problem"/>.</param>
internal sealed record LoadWindow(LoadProblem Problem, int[] Least, double Base)
{
    /// <summary>The load of the whole problem.</summary>
    public int[] Whole(int[] load) => [.. load.Zip(Least, (k, l) => k + l)];

    /// <summary>Null when the pieces aboard for certain already break a limit.</summary>
    public static LoadWindow? Create(LoadProblem problem, int[] least, int[] most)
    {
        long money = problem.Limits.BudgetCents - problem.CostCents(least);
        double space = problem.Limits.Space - problem.SpaceOf(least);
        if (money < 0 || space < -LoadLimits.SpaceSlack)
        {
            return null;
        }

        LoadPart[] parts = [.. problem.Parts.Select((p, i) => p with
        {
            MaxUnits = most[i] - least[i],
            UnitCharges = [.. Enumerable.Range(least[i] + 1, most[i] - least[i]).Select(p.Charge)],
        })];
        double charges = 0;
        for (int p = 0; p < least.Length; p++)
        {
            for (int k = 1; k <= least[p]; k++)
            {
                charges += problem.Parts[p].Charge(k);
            }
        }

        var limits = new LoadLimits(money, Math.Max(space, 0));
        return new LoadWindow(LoadProblemBuilder.Build(parts, Jobs(problem, least), limits), least, -charges);
    }

    private static IEnumerable<LoadJob> Jobs(LoadProblem problem, int[] least)
    {
        yield return new LoadJob(problem.AlwaysDone, []);
        LoadUnits units = problem.Units;
        for (int u = 0; u < units.Total; u++)
        {
            if (units.Gain[u] > 0)
            {
                yield return new LoadJob(units.Gain[u], Left(new PartNeed(units.Part[u], units.Piece(u)), least));
            }
        }

        LoadJobs jobs = problem.Jobs;
        for (int j = 0; j < jobs.Count; j++)
        {
            int first = jobs.First(j);
            yield return new LoadJob(jobs.Weight[j], [.. Enumerable.Range(first, jobs.Lines(j))
                .SelectMany(i => Left(new PartNeed(jobs.Part[i], jobs.Level[i]), least))]);
        }
    }

    private static PartNeed[] Left(PartNeed need, int[] least) =>
        need.Quantity > least[need.Part] ? [new PartNeed(need.Part, need.Quantity - least[need.Part])] : [];
}
