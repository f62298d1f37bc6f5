using PartsSignal.Analysis.VanPlan.Loads;

namespace PartsSignal.Analysis.VanPlan.Replay;

/// <summary>
/// Under <see cref="ConsumeRule.TakeWhatIsThere"/> every piece needed comes off the stock, so whether a job finds its
/// parts depends only on how many pieces were asked for since the last ones came back: each job turns into levels the
/// load must reach, and the first-come replay into a <see cref="LoadProblem"/>, exactly.
/// </summary>
internal static class RequiredLevels
{
    /// <summary>The jobs with their levels.</summary>
    public static IReadOnlyList<LoadJob> From(JobStream jobs, RestockRule restock)
    {
        var lines = new Queue<(int Back, int Quantity)>[restock.LeadDays.Count];
        int[] outstanding = new int[restock.LeadDays.Count];
        var result = new List<LoadJob>(jobs.Count);
        for (int j = 0; j < jobs.Count; j++)
        {
            var levels = new PartNeed[jobs.End(j) - jobs.First(j)];
            for (int i = jobs.First(j); i < jobs.End(j); i++)
            {
                int part = jobs.Part[i];
                Queue<(int Back, int Quantity)> out1 = lines[part] ??= new();
                while (out1.TryPeek(out var oldest) && oldest.Back <= jobs.Day[j])
                {
                    outstanding[part] -= out1.Dequeue().Quantity;
                }

                outstanding[part] += jobs.Quantity[i];
                out1.Enqueue((restock.BackAboard(jobs.Day[j], part), jobs.Quantity[i]));
                levels[i - jobs.First(j)] = new PartNeed(part, outstanding[part]);
            }

            result.Add(new LoadJob(jobs.Weight[j], levels));
        }

        return result;
    }
}
