namespace PartsSignal.Analysis.CheckOrder;

/// <summary>
/// Exact order by dynamic programming over the set of checks done: what has been opened and how likely the search is
/// still on depend on that set alone, not on the order inside it (Held and Karp 1962).
/// </summary>
internal static class SubsetSearch
{
    /// <summary>Best order of all suspects that are not in <paramref name="first"/>, given that those are done.</summary>
    public static int[] Order(CheckProblem problem, int[] first)
    {
        int[] places = [.. Enumerable.Range(0, problem.Suspects.Count).Except(first)];
        int n = places.Length, full = (1 << n) - 1;
        if (n == 0)
        {
            return [];
        }

        var state = new State(problem, first, places);
        var best = new double[full + 1];
        var choice = new int[full + 1];
        for (int done = full - 1; done >= 0; done--)
        {
            (best[done], choice[done]) = (double.PositiveInfinity, -1);
            double reached = state.Reached(done);
            for (int i = 0; i < n; i++)
            {
                if ((done & (1 << i)) != 0 || !state.Allowed(i, done))
                {
                    continue;
                }

                int after = done | (1 << i);
                double minutes = problem.InferLast && after == full ? 0 : reached * state.Minutes(i, done) + best[after];
                if (minutes < best[done] - 1e-12)
                {
                    (best[done], choice[done]) = (minutes, i);
                }
            }
        }

        var order = new List<int>(n);
        for (int done = 0; done != full && choice[done] >= 0; done |= 1 << choice[done])
        {
            order.Add(places[choice[done]]);
        }

        return order.Count == n ? [.. order] : throw new ArgumentException("The required orders contradict each other.", nameof(problem));
    }

    private sealed class State
    {
        private readonly Suspect[] _suspects;
        private readonly int[] _prerequisites;
        private readonly int[] _companions;
        private readonly double[] _opening;
        private readonly double _reachedAtStart;

        public State(CheckProblem problem, int[] first, int[] places)
        {
            _suspects = [.. places.Select(p => problem.Suspects[p])];
            HashSet<string> open = [.. first.Select(p => problem.Suspects[p].Opening).OfType<string>()];
            _opening = [.. _suspects.Select(s => s.Opening is { } o && !open.Contains(o) ? problem.OpeningMinutes[o] : 0)];
            _companions = [.. _suspects.Select(s => s.Opening is null ? 0 : Mask(i => _suspects[i].Opening == s.Opening))];
            _prerequisites = [.. places.Select(p => Mask(i => problem.MustPrecede.Contains((places[i], p))))];
            _reachedAtStart = 1 - first.Sum(p => problem.Suspects[p].Finds);
        }

        public double Reached(int done)
        {
            double reached = _reachedAtStart;
            for (int i = 0; i < _suspects.Length; i++)
            {
                reached -= (done & (1 << i)) != 0 ? _suspects[i].Finds : 0;
            }

            return Math.Max(0, reached);
        }

        public bool Allowed(int i, int done) => (_prerequisites[i] & ~done) == 0;

        public double Minutes(int i, int done) => _suspects[i].Minutes + ((_companions[i] & done) == 0 ? _opening[i] : 0);

        private int Mask(Func<int, bool> inside)
        {
            int mask = 0;
            for (int i = 0; i < _suspects.Length; i++)
            {
                mask |= inside(i) ? 1 << i : 0;
            }

            return mask;
        }
    }
}
