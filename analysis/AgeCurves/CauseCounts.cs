namespace PartsSignal.Analysis.AgeCurves;

/// <summary>Failures by cause at one age.</summary>
/// <param name="Age">The age.</param>
/// <param name="AtRisk">Appliances with entry &lt; age &lt;= exit.</param>
/// <param name="ByCause">Failures of cause 1, 2, ...</param>
internal sealed record CauseCounts(double Age, long AtRisk, long[] ByCause)
{
    /// <summary>Counts at every age with a failure, ages ascending.</summary>
    public static IEnumerable<CauseCounts> From(IReadOnlyList<AgeSpan> spans, int causes)
    {
        double[] entries = [.. spans.Select(s => s.Entry).Order()];
        AgeSpan[] byExit = [.. spans.OrderBy(s => s.Exit)];
        int entered = 0;
        int at = 0;
        while (at < byExit.Length)
        {
            double age = byExit[at].Exit;
            int left = at;
            long[] counts = new long[causes];
            for (; at < byExit.Length && byExit[at].Exit == age; at++)
            {
                if (byExit[at].Failed)
                {
                    counts[byExit[at].Cause - 1]++;
                }
            }

            while (entered < entries.Length && entries[entered] < age)
            {
                entered++;
            }

            if (counts.Any(c => c > 0))
            {
                yield return new CauseCounts(age, entered - left, counts);
            }
        }
    }
}
