namespace PartsSignal.Analysis.AgeCurves;

/// <summary>Share that failed of one cause by an age.</summary>
/// <param name="Share">Cumulative incidence, 0 to 1.</param>
/// <param name="AalenVariance">Variance after Aalen (1978), as Gray (1988) computes it; needs counts only.</param>
/// <param name="JackknifeVariance">Infinitesimal-jackknife variance; null unless asked for.</param>
internal sealed record Incidence(double Share, double AalenVariance, double? JackknifeVariance);

/// <summary>One step of competing causes.</summary>
/// <param name="Age">Age of the failures.</param>
/// <param name="AtRisk">Appliances at risk at this age.</param>
/// <param name="Survival">Share that has not failed of any cause.</param>
/// <param name="ByCause">Cause 1 first; with Survival the shares add up to 1.</param>
internal sealed record CompetingPoint(double Age, long AtRisk, double Survival, IReadOnlyList<Incidence> ByCause);

/// <summary>
/// Cumulative incidence of competing causes (Aalen and Johansen 1978): F_k(t) = sum S(t-) d_k/n, all causes on one
/// risk set. Failures of several causes at one age are one step; nothing is jittered, so two runs agree to the last
/// digit.
/// </summary>
internal static class AalenJohansen
{
    /// <summary>Estimates all causes together.</summary>
    /// <param name="spans">Spans; causes are 1 to <paramref name="causes"/>.</param>
    /// <param name="causes">Number of causes.</param>
    /// <param name="jackknife">Also give the jackknife variance; its work grows with distinct spans times steps.</param>
    public static IReadOnlyList<CompetingPoint> Estimate(IReadOnlyList<AgeSpan> spans, int causes, bool jackknife = false)
    {
        IReadOnlyList<AgeSpan> good = CheckedSpans.From(spans).Good;
        if (good.Any(s => s.Cause > causes))
        {
            throw new ArgumentException("A span has a cause beyond the number of causes.", nameof(spans));
        }

        var steps = new List<CompetingPoint>();
        var variances = Enumerable.Range(0, causes).Select(_ => new AalenVariance()).ToArray();
        JackknifeVariance? influence = jackknife ? new JackknifeVariance(good, causes) : null;
        double survival = 1;
        double[] share = new double[causes];
        foreach (CauseCounts set in CauseCounts.From(good, causes))
        {
            double[]? squares = influence?.Step(set, survival);
            long all = set.ByCause.Sum();
            double after = survival * (set.AtRisk - all) / set.AtRisk;
            var byCause = new Incidence[causes];
            for (int k = 0; k < causes; k++)
            {
                share[k] += survival * set.ByCause[k] / set.AtRisk;
                double variance = variances[k].Step(set.AtRisk, set.ByCause[k], all - set.ByCause[k], survival, after, share[k]);
                byCause[k] = new Incidence(share[k], variance, squares?[k]);
            }

            survival = after;
            steps.Add(new CompetingPoint(set.Age, set.AtRisk, survival, byCause));
        }

        return steps;
    }
}
