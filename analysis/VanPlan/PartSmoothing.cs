using PartsSignal.Analysis.VanPlan.Loads;

namespace PartsSignal.Analysis.VanPlan;

/// <summary>
/// Pulls the use of each part towards what its component's use on all families of the type leads to expect: calls of the
/// families it fits, times the component's jobs per call, shared among the family's parts of that component.
/// Gamma-Poisson over the parts, shape by moments.
/// </summary>
internal static class PartSmoothing
{
    /// <summary>Smoothed use over raw use, by part; 1 where nothing is known to smooth with.</summary>
    public static double[] Factors(AgedJobs aged, DemandSizes sizes, PartKinds kinds)
    {
        int components = kinds.Component.Count == 0 ? 0 : kinds.Component.Max() + 1;
        double[] calls = new double[sizes.Families];
        int[] typeOf = new int[sizes.Families];
        double[] typeCalls = new double[sizes.Types];
        double[] typeUse = new double[sizes.Types * components];
        double[] counted = new double[sizes.Parts];
        var cells = new Dictionary<(int Family, int Part), double>();
        foreach (var listed in kinds.Listed)
        {
            cells[listed] = 0;
        }

        for (int i = 0; i < aged.Jobs.Count; i++)
        {
            PastJob job = aged.Jobs[i];
            if (job.Family < 0 || job.Type < 0)
            {
                continue;
            }

            typeOf[job.Family] = job.Type;
            calls[job.Family] += aged.Weights[i];
            typeCalls[job.Type] += aged.Weights[i];
            foreach (PartNeed need in job.Needs.Where(n => kinds.Component[n.Part] >= 0))
            {
                typeUse[(job.Type * components) + kinds.Component[need.Part]] += aged.Weights[i];
                counted[need.Part] += aged.Weights[i];
                cells[(job.Family, need.Part)] = aged.Weights[i] + cells.GetValueOrDefault((job.Family, need.Part));
            }
        }

        double[] expected = new double[sizes.Parts];
        foreach (var rivals in cells.Where(c => kinds.Component[c.Key.Part] >= 0).GroupBy(c => (c.Key.Family, Component: kinds.Component[c.Key.Part])))
        {
            int type = typeOf[rivals.Key.Family];
            double perCall = typeCalls[type] > 0 ? typeUse[(type * components) + rivals.Key.Component] / typeCalls[type] : 0;
            double all = rivals.Sum(r => r.Value + LeastShare);
            foreach (var cell in rivals.OrderBy(r => r.Key.Part))
            {
                expected[cell.Key.Part] += calls[rivals.Key.Family] * perCall * (cell.Value + LeastShare) / all;
            }
        }

        double shape = SharedMix.Shape(counted, expected, aged.MeanWeight);
        return [.. counted.Select((n, p) => n > 0 && expected[p] > 0 ? expected[p] * SharedMix.Factor(n, expected[p], shape) / n : 1)];
    }

    /// <summary>A listed part that was not used yet counts like half a job among its rivals.</summary>
    private const double LeastShare = 0.5;
}
