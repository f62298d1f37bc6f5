namespace PartsSignal.Analysis.VanPlan;

/// <summary>
/// What share of a job of the shop is to be expected on each van: the van's share of all jobs, times how its mix of
/// appliance types, and of families within them, differs from the shop's.
/// </summary>
internal sealed class VanMix
{
    private readonly int _vans;
    private readonly double[] _share;
    private readonly double[] _type;
    private readonly double[] _family;

    private VanMix(int vans, double[] share, double[] type, double[] family) =>
        (_vans, _share, _type, _family) = (vans, share, type, family);

    /// <summary>Learns from weighted jobs.</summary>
    public static VanMix Learn(IReadOnlyList<PastJob> jobs, double[] weights, double meanWeight, DemandSizes sizes)
    {
        double[] share = new double[sizes.Vans];
        for (int i = 0; i < jobs.Count; i++)
        {
            if (jobs[i].Van >= 0)
            {
                share[jobs[i].Van] += weights[i];
            }
        }

        double all = share.Sum();
        share = [.. share.Select(s => all > 0 ? s / all : 1.0 / sizes.Vans)];
        var flat = new VanMix(sizes.Vans, share, Ones(sizes.Types * sizes.Vans), Ones(sizes.Families * sizes.Vans));
        var typed = new VanMix(sizes.Vans, share, flat.Factors(jobs, weights, meanWeight, sizes.Types, j => j.Type), flat._family);
        return new VanMix(sizes.Vans, share, typed._type, typed.Factors(jobs, weights, meanWeight, sizes.Families, j => j.Family));
    }

    /// <summary>Expected share of such a job on a van.</summary>
    public double Share(PastJob job, int van) =>
        _share[van]
        * (job.Type < 0 ? 1 : _type[(job.Type * _vans) + van])
        * (job.Family < 0 ? 1 : _family[(job.Family * _vans) + van]);

    private static double[] Ones(int count) => [.. Enumerable.Repeat(1.0, count)];

    private double[] Factors(IReadOnlyList<PastJob> jobs, double[] weights, double meanWeight, int groups, Func<PastJob, int> group)
    {
        double[] counts = new double[groups * _vans];
        double[] expected = new double[groups * _vans];
        for (int i = 0; i < jobs.Count; i++)
        {
            int g = group(jobs[i]);
            if (g < 0 || jobs[i].Van < 0)
            {
                continue;
            }

            counts[(g * _vans) + jobs[i].Van] += weights[i];
            for (int v = 0; v < _vans; v++)
            {
                expected[(g * _vans) + v] += weights[i] * Share(jobs[i], v);
            }
        }

        return SharedMix.Factors(counts, expected, meanWeight);
    }
}
