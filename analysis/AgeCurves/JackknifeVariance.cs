namespace PartsSignal.Analysis.AgeCurves;

/// <summary>
/// Infinitesimal-jackknife variance of cumulative incidences: each appliance's influence on survival and on every
/// cause is carried from step to step, and their squares are summed (Jaeckel 1972; Therneau and Grambsch 2000).
/// Appliances with the same span share one influence.
/// </summary>
internal sealed class JackknifeVariance
{
    private readonly (AgeSpan Span, int Count)[] _groups;
    private readonly double[] _survival;
    private readonly double[][] _share;

    public JackknifeVariance(IReadOnlyList<AgeSpan> spans, int causes)
    {
        _groups = [.. spans.GroupBy(s => s).OrderBy(g => g.Key.Exit).ThenBy(g => g.Key.Entry).ThenBy(g => g.Key.Cause).Select(g => (g.Key, g.Count()))];
        _survival = new double[_groups.Length];
        _share = [.. Enumerable.Range(0, causes).Select(_ => new double[_groups.Length])];
    }

    /// <summary>Carries all influences over one step.</summary>
    /// <param name="set">Counts at the step.</param>
    /// <param name="before">Survival just before it.</param>
    /// <returns>Variance of each cause's incidence at the step.</returns>
    public double[] Step(CauseCounts set, double before)
    {
        double n = set.AtRisk;
        double all = set.ByCause.Sum() / n;
        double[] squares = new double[_share.Length];
        for (int i = 0; i < _groups.Length; i++)
        {
            (AgeSpan span, int count) = _groups[i];
            bool atRisk = span.Entry < set.Age && set.Age <= span.Exit;
            bool failsNow = atRisk && span.Failed && span.Exit == set.Age;
            for (int k = 0; k < _share.Length; k++)
            {
                double rate = set.ByCause[k] / n;
                double own = failsNow && span.Cause == k + 1 ? 1 : 0;
                _share[k][i] += _survival[i] * rate + before * (own - (atRisk ? rate : 0)) / n;
                squares[k] += count * _share[k][i] * _share[k][i];
            }

            _survival[i] = _survival[i] * (1 - all) - before * ((failsNow ? 1 : 0) - (atRisk ? all : 0)) / n;
        }

        return squares;
    }
}
