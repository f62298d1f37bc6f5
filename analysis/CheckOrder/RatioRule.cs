namespace PartsSignal.Analysis.CheckOrder;

/// <summary>
/// The check with the most found per minute comes next: optimal for perfect, unrelated checks (Mitten 1960; Simon and
/// Kadane 1975), and a good rule where shared openings or too many suspects stand against an exact answer.
/// </summary>
internal static class RatioRule
{
    /// <summary>Order of all suspects that are not in <paramref name="first"/>, given that those are done.</summary>
    public static int[] Order(CheckProblem problem, int[] first)
    {
        var left = Enumerable.Range(0, problem.Suspects.Count).Except(first).ToList();
        HashSet<string> open = [.. first.Select(p => problem.Suspects[p].Opening).OfType<string>()];
        var order = new List<int>(left.Count);
        while (left.Count > 0)
        {
            int next = left
                .Where(i => !problem.MustPrecede.Any(m => m.Then == i && left.Contains(m.First)))
                .OrderByDescending(i => Ratio(problem, i, open)).ThenBy(i => i).FirstOrDefault(-1);
            if (next < 0)
            {
                throw new ArgumentException("The required orders contradict each other.", nameof(problem));
            }

            order.Add(next);
            left.Remove(next);
            if (problem.Suspects[next].Opening is { } o)
            {
                open.Add(o);
            }
        }

        return [.. order];
    }

    private static double Ratio(CheckProblem problem, int i, HashSet<string> open)
    {
        Suspect s = problem.Suspects[i];
        double minutes = s.Minutes + (s.Opening is { } o && !open.Contains(o) ? problem.OpeningMinutes[o] : 0);
        return minutes == 0 ? double.PositiveInfinity : s.Finds / minutes;
    }
}
