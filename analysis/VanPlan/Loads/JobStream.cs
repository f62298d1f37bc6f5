namespace PartsSignal.Analysis.VanPlan.Loads;

/// <summary>Jobs of one van in the order they came, packed into arrays.</summary>
internal sealed class JobStream
{
    private readonly int[] _start;

    private JobStream(int[] start, int[] day, double[] weight, int[] part, int[] quantity) =>
        (_start, Day, Weight, Part, Quantity) = (start, day, weight, part, quantity);

    /// <summary>Number of jobs.</summary>
    public int Count => Day.Length;

    internal int[] Day { get; }

    internal double[] Weight { get; }

    internal int[] Part { get; }

    internal int[] Quantity { get; }

    internal int First(int job) => _start[job];

    internal int End(int job) => _start[job + 1];

    /// <summary>Packs jobs.</summary>
    /// <param name="jobs">Day from the start of the replay (0 or more, not falling), weight, and the parts needed.</param>
    /// <exception cref="ArgumentException">Days fall.</exception>
    public static JobStream From(IEnumerable<(int Day, double Weight, IReadOnlyList<PartNeed> Needs)> jobs)
    {
        var start = new List<int> { 0 };
        var day = new List<int>();
        var weight = new List<double>();
        var part = new List<int>();
        var quantity = new List<int>();
        foreach ((int on, double worth, IReadOnlyList<PartNeed> needs) in jobs)
        {
            if (on < 0 || (day.Count > 0 && on < day[^1]))
            {
                throw new ArgumentException("Jobs come in the order of their days.", nameof(jobs));
            }

            day.Add(on);
            weight.Add(worth);
            foreach (IGrouping<int, PartNeed> need in needs.GroupBy(n => n.Part).OrderBy(g => g.Key))
            {
                part.Add(need.Key);
                quantity.Add(need.Sum(n => n.Quantity));
            }

            start.Add(part.Count);
        }

        return new JobStream([.. start], [.. day], [.. weight], [.. part], [.. quantity]);
    }
}
