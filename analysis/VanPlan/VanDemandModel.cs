using System.Runtime.InteropServices;
using PartsSignal.Analysis.VanPlan.Loads;

namespace PartsSignal.Analysis.VanPlan;

/// <summary>
/// Part sets per day for each van: aged jobs of the whole shop, scaled to the van's own share, its own mix of
/// appliances and families and its own part sets (each gamma-Poisson shrunk to the shop's), in the season to come,
/// blended with single-part use where the data is thin.
/// </summary>
internal sealed class VanDemandModel
{
    private readonly AgedJobs _aged;
    private readonly VanMix _mix;
    private readonly DemandOptions _options;
    private readonly LevelKey[] _sets;
    private readonly int[] _setOf;
    private readonly double[] _evidence;
    private readonly double[] _smooth;

    private VanDemandModel(AgedJobs aged, DemandSizes sizes, PartKinds kinds, DemandOptions options)
    {
        (_aged, _options) = (aged, options);
        _mix = VanMix.Learn(aged.Jobs, aged.Weights, aged.MeanWeight, sizes);
        (_sets, _setOf) = Distinct(aged.Jobs);
        double trust = Math.Min(1, options.FewJobs / Math.Max(aged.Total, 1));
        _smooth = [.. PartSmoothing.Factors(aged, sizes, kinds).Select(f => 1 + (trust * (f - 1)))];
        _evidence = new double[sizes.Parts];
        for (int i = 0; i < aged.Jobs.Count; i++)
        {
            foreach (PartNeed need in aged.Jobs[i].Needs)
            {
                _evidence[need.Part] += aged.Weights[i];
            }
        }
    }

    /// <summary>Learns from jobs of the days before one.</summary>
    /// <param name="jobs">All settled jobs known then.</param>
    /// <param name="asOf">First day the plan is for.</param>
    /// <param name="sizes">How many vans, appliance types, families and parts there are.</param>
    /// <param name="options">How.</param>
    /// <param name="kinds">What is known of the parts, or null if nothing.</param>
    public static VanDemandModel Learn(IReadOnlyList<PastJob> jobs, DateOnly asOf, DemandSizes sizes, DemandOptions options, PartKinds? kinds = null) =>
        new(AgedJobs.Before(jobs, asOf, sizes.Types, options), sizes, kinds ?? PartKinds.Unknown(sizes.Parts), options);

    /// <summary>The demand of one van.</summary>
    public VanDemand Of(int van)
    {
        double[] own = new double[_sets.Length];
        double[] expected = new double[_sets.Length];
        double[] perDay = new double[_sets.Length];
        for (int i = 0; i < _setOf.Length; i++)
        {
            double share = _mix.Share(_aged.Jobs[i], van);
            own[_setOf[i]] += _aged.Jobs[i].Van == van ? _aged.Weights[i] : 0;
            expected[_setOf[i]] += _aged.Weights[i] * share;
            perDay[_setOf[i]] += _aged.PerDay[i] * share;
        }

        double shape = SharedMix.Shape(own, expected, _aged.MeanWeight);
        double loose = _options.SinglesShare * Math.Min(1, _options.ThinJobs / Math.Max(_aged.Total, 1));
        var rates = new Dictionary<LevelKey, double>();
        for (int s = 0; s < _sets.Length; s++)
        {
            Blend(rates, _sets[s], perDay[s] * Smooth(_sets[s]) * SharedMix.Factor(own[s], expected[s], shape), loose);
        }

        return new VanDemand([.. rates.OrderBy(r => r.Key).Select(r => new PartSetRate(r.Key.Needs, r.Value))], _evidence, _aged.Total);
    }

    private double Smooth(LevelKey set) => set.Needs.Length == 0 ? 1 : set.Needs.Average(n => _smooth[n.Part]);

    private static (LevelKey[] Sets, int[] SetOf) Distinct(IReadOnlyList<PastJob> jobs)
    {
        var index = new Dictionary<LevelKey, int>();
        int[] setOf = new int[jobs.Count];
        for (int i = 0; i < jobs.Count; i++)
        {
            var key = new LevelKey([.. jobs[i].Needs.OrderBy(n => n.Part)]);
            ref int known = ref CollectionsMarshal.GetValueRefOrAddDefault(index, key, out bool exists);
            setOf[i] = known = exists ? known : index.Count - 1;
        }

        return ([.. index.OrderBy(k => k.Value).Select(k => k.Key)], setOf);
    }

    /// <summary>A set seen once or twice may be chance: part of it is taken as jobs that need one of its parts alone.</summary>
    private static void Blend(Dictionary<LevelKey, double> rates, LevelKey key, double rate, double loose)
    {
        double whole = key.Needs.Length > 1 ? 1 - loose : 1;
        rates[key] = (whole * rate) + rates.GetValueOrDefault(key);
        foreach (PartNeed need in key.Needs.Length > 1 ? key.Needs : [])
        {
            var single = new LevelKey([need]);
            rates[single] = (loose * rate / key.Needs.Length) + rates.GetValueOrDefault(single);
        }
    }
}
