namespace PartsSignal.Analysis.AgeCurves;

/// <summary>
/// Distinct ages at failure with, for every failure, the run of ages its log window covers. Runs make a round of the
/// estimate cost as much as there are failures.
/// </summary>
internal sealed class LogWindows
{
    private readonly (int Own, int First, int Last)[] _runs;

    private LogWindows(double[] ages, long[] counts, (int Own, int First, int Last)[] runs) => (Ages, Counts, _runs) = (ages, counts, runs);

    /// <summary>Distinct ages, ascending.</summary>
    public IReadOnlyList<double> Ages { get; }

    /// <summary>Failures at each age.</summary>
    public IReadOnlyList<long> Counts { get; }

    public static LogWindows From(IReadOnlyList<TruncatedAge> failures)
    {
        TiedAges ties = TiedAges.Among(failures.SelectMany(f => new[] { f.Age, f.Earliest, f.Latest }));
        double[] ages = [.. failures.Select(f => ties.Snap(f.Age)).Distinct().Order()];
        long[] counts = new long[ages.Length];
        var runs = new (int, int, int)[failures.Count];
        for (int i = 0; i < runs.Length; i++)
        {
            int own = Array.BinarySearch(ages, ties.Snap(failures[i].Age));
            counts[own]++;
            runs[i] = (own, AtLeast(ages, ties.Snap(failures[i].Earliest)), AtMost(ages, ties.Snap(failures[i].Latest)));
        }

        Array.Sort(runs);
        return new LogWindows(ages, counts, runs);
    }

    /// <summary>Place of each failure's own age, and of the first and last age its window covers.</summary>
    public IReadOnlyList<(int Own, int First, int Last)> Runs => _runs;

    /// <summary>One round of self-consistency.</summary>
    public double[] Next(double[] mass)
    {
        double[] upTo = new double[mass.Length + 1];
        for (int j = 0; j < mass.Length; j++)
        {
            upTo[j + 1] = upTo[j] + mass[j];
        }

        double[] change = new double[mass.Length + 1];
        foreach ((_, int first, int last) in _runs)
        {
            double inverse = 1 / (upTo[last + 1] - upTo[first]);
            change[first] += inverse;
            change[last + 1] -= inverse;
        }

        double[] next = new double[mass.Length];
        double weight = 0;
        double total = 0;
        for (int j = 0; j < next.Length; j++)
        {
            weight += change[j];
            next[j] = Counts[j] / weight;
            total += next[j];
        }

        for (int j = 0; j < next.Length; j++)
        {
            next[j] /= total;
        }

        return next;
    }

    /// <summary>True when every age can be reached from every other: a failure leads from its own age to all ages in its window.</summary>
    public bool Connected() => Middle() is var (first, last) && first == 0 && last == Ages.Count - 1 && Array.TrueForAll(Mutual(), r => r);

    /// <summary>First and last place of the ages that can be compared with the middle one.</summary>
    public (int First, int Last) Middle()
    {
        bool[] mutual = Mutual();
        return (Array.IndexOf(mutual, true), Array.LastIndexOf(mutual, true));
    }

    private bool[] Mutual()
    {
        int middle = _runs[_runs.Length / 2].Own;
        return [.. Reach(middle, forward: true).Zip(Reach(middle, forward: false), (a, b) => a && b)];
    }

    private bool[] Reach(int from, bool forward)
    {
        bool[] reached = new bool[Ages.Count];
        reached[from] = true;
        for (bool grew = true; grew;)
        {
            grew = false;
            int[] before = Running(reached);
            int[] opened = new int[Ages.Count + 1];
            foreach ((int own, int first, int last) in _runs)
            {
                int inside = before[last + 1] - before[first];
                if (forward && reached[own] && inside < last - first + 1)
                {
                    opened[first]++;
                    opened[last + 1]--;
                    grew = true;
                }
                else if (!forward && !reached[own] && inside > 0)
                {
                    reached[own] = true;
                    grew = true;
                }
            }

            // All windows of a round at once: one by one they would cost failures times ages.
            for (int j = 0, open = 0; j < reached.Length; j++)
            {
                open += opened[j];
                reached[j] |= open > 0;
            }
        }

        return reached;
    }

    private static int[] Running(bool[] flags)
    {
        int[] sums = new int[flags.Length + 1];
        for (int i = 0; i < flags.Length; i++)
        {
            sums[i + 1] = sums[i] + (flags[i] ? 1 : 0);
        }

        return sums;
    }

    private static int AtLeast(double[] sorted, double value) => Array.BinarySearch(sorted, value) is var at && at >= 0 ? at : ~at;

    private static int AtMost(double[] sorted, double value) => Array.BinarySearch(sorted, value) is var at && at >= 0 ? at : ~at - 1;
}

/// <summary>
/// A failure that is in the log only because it happened between two ages: those the appliance had when the log
/// began and when it was closed.
/// </summary>
/// <param name="Age">Age at failure.</param>
/// <param name="Earliest">Age when the log began; 0 if made later.</param>
/// <param name="Latest">Age when the log was closed.</param>
public readonly record struct TruncatedAge(double Age, double Earliest, double Latest)
{
    /// <summary>Why this failure cannot be used, or null if it can.</summary>
    public string? Fault() =>
        !double.IsFinite(Age) || !double.IsFinite(Earliest) || !double.IsFinite(Latest) ? "an age is missing" :
        !(Earliest >= 0) || !(Age > 0) ? "failed, or watched, before it was made"
        : !(Earliest <= Age && Age <= Latest) ? "failed outside the time of the log"
        : null;
}
