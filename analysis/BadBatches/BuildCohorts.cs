using PartsSignal.Analysis.Statistics.Distributions;

namespace PartsSignal.Analysis.BadBatches;

/// <summary>A run of build months, both ends included.</summary>
internal readonly record struct BuildMonths(int From, int To);

/// <summary>
/// Calls of one family by build month and age, and those of them that needed one component. A unit's second case of the
/// component is left out: a repair that did not hold says nothing of how the unit was built.
/// </summary>
internal sealed class BuildCohorts
{
    // Years of age that are compared with each other: 0, 1, 2, 3, 4, 5-6, 7-9, 10 and more.
    private static readonly int[] AgeStarts = [0, 12, 24, 36, 48, 60, 84, 120];

    private readonly int[][] _calls;
    private readonly int[][] _cases;

    private BuildCohorts(IReadOnlyList<BatchCall> calls, string component)
    {
        (Calls, Component, First) = (calls, component, calls.Min(c => c.MadeMonth));
        int months = calls.Max(c => c.MadeMonth) - First + 1;
        _calls = [.. AgeStarts.Select(_ => new int[months + 1])];
        _cases = [.. AgeStarts.Select(_ => new int[months + 1])];
        foreach (BatchCall call in calls)
        {
            int age = Stratum(call);
            _calls[age][call.MadeMonth - First + 1]++;
            _cases[age][call.MadeMonth - First + 1] += IsCase(call) ? 1 : 0;
        }

        foreach (int[] counts in _calls.Concat(_cases))
        {
            for (int m = 1; m < counts.Length; m++)
            {
                counts[m] += counts[m - 1];
            }
        }
    }

    /// <summary>Calls counted.</summary>
    public IReadOnlyList<BatchCall> Calls { get; }

    /// <summary>The component.</summary>
    public string Component { get; }

    /// <summary>First build month.</summary>
    public int First { get; }

    /// <summary>Last build month.</summary>
    public int Last => First + _calls[0].Length - 2;

    /// <summary>Cases of the component.</summary>
    public int Cases => _cases.Sum(c => c[^1]);

    /// <summary>Sorts the calls of a family for one component, those under an age only.</summary>
    /// <param name="family">Calls of the family, oldest first.</param>
    /// <param name="component">The component.</param>
    /// <param name="youngerThan">Age in months that calls must be under, or null for all.</param>
    /// <returns>The cohorts, or null if no call is left.</returns>
    public static BuildCohorts? From(IEnumerable<BatchCall> family, string component, int? youngerThan)
    {
        var failed = new HashSet<string>(StringComparer.Ordinal);
        BatchCall[] calls = [.. family.Where(c => c.Component != component || c.UnitId is null || failed.Add(c.UnitId))
            .Where(c => !(c.Month - c.MadeMonth >= youngerThan))];
        return calls.Length == 0 ? null : new BuildCohorts(calls, component);
    }

    /// <summary>True for a call that needed the component.</summary>
    public bool IsCase(BatchCall call) => call.Component == Component;

    /// <summary>Totals by age when the calls of some build months are held against all others.</summary>
    public FixedTotals[] Against(BuildMonths months) =>
        [.. _calls.Select((c, a) => new FixedTotals(c[^1], _cases[a][^1], Between(c, months)))];

    /// <summary>Cases built in some months.</summary>
    public int CasesIn(BuildMonths months) => _cases.Sum(c => Between(c, months));

    private int Between(int[] counts, BuildMonths months) =>
        counts[Math.Clamp(months.To - First + 1, 0, counts.Length - 1)] - counts[Math.Clamp(months.From - First, 0, counts.Length - 1)];

    private static int Stratum(BatchCall call) => Math.Max(0, Array.FindLastIndex(AgeStarts, s => call.Month - call.MadeMonth >= s));
}
