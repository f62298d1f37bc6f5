using System.Collections.Concurrent;
using PartsSignal.SampleShop.Simulation;
using PartsSignal.SampleShop.World;

namespace PartsSignal.SampleShop.Scoring;

/// <summary>What one complaint as typed says about one cause of a family.</summary>
/// <param name="Cause">Index of the cause.</param>
/// <param name="Calls">Calls of this kind per failure: the chance to show so, and the call that comes back after a wrong diagnosis.</param>
/// <param name="Wrong">Share of those calls whose diagnosis is wrong.</param>
/// <param name="TakenFor">What it is then taken for; the shares sum to 1, or none.</param>
internal sealed record ShownAs(int Cause, double Calls, double Wrong, IReadOnlyList<(int Cause, double Share)> TakenFor)
{
    // a wrong diagnosis comes back unless the customer goes elsewhere or the repair was declined
    private const double ComesBack = 0.80;

    private static readonly ConcurrentDictionary<(int Family, string Kind, int Code), ShownAs[]> Known = new();

    /// <summary>All causes that can lie behind a complaint.</summary>
    public static IReadOnlyList<ShownAs> AllOf(ModelFamily family, string kind, int codeGroup) =>
        Known.GetOrAdd((family.Index, kind, codeGroup), _ => [.. Build(family, kind, codeGroup)]);

    private static IEnumerable<ShownAs> Build(ModelFamily family, string kind, int codeGroup)
    {
        for (int k = 0; k < family.Causes.Count; k++)
        {
            Cause cause = family.Causes[k].Cause;
            double likelihood = ComplaintOdds.Likelihood(family, cause, kind, codeGroup);
            if (likelihood == 0)
            {
                continue;
            }

            double[] mistaken = MistakenFor(family, k, kind);
            double total = mistaken.Sum();
            double miss = total > 0 ? Technician.MeanMissChance(cause) : 0;
            double calls = 1 + (ComesBack * miss);
            (int, double)[] taken = total > 0
                ? [.. mistaken.Select((w, i) => (i, w / total)).Where(t => t.Item2 > 0)]
                : [];
            yield return new ShownAs(k, likelihood * calls, miss / calls, taken);
        }
    }

    // a vague complaint hides how the fault showed: any of the ways it can
    private static double[] MistakenFor(ModelFamily family, int cause, string kind)
    {
        if (kind is not ComplaintOdds.VagueKind and not ComplaintOdds.NoKind)
        {
            return Mistaken.Weights(family, cause, kind);
        }

        double[] sum = new double[family.Causes.Count];
        foreach ((string shown, double share) in family.Causes[cause].Cause.Odds)
        {
            double[] one = Mistaken.Weights(family, cause, ComplaintOdds.Shown(family, shown));
            for (int i = 0; i < sum.Length; i++)
            {
                sum[i] += share * one[i];
            }
        }

        return sum;
    }
}
