using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Statistics;
using PartsSignal.Analysis.Statistics.Distributions;
using PartsSignal.Analysis.Statistics.Intervals;
using PartsSignal.Analysis.Statistics.Shrinkage;

namespace PartsSignal.Analysis.Callbacks;

/// <summary>
/// Share of finished repairs that came back to this shop. Customers who went elsewhere leave no trace, so it is a lower
/// bound of repairs that did not hold.
/// </summary>
/// <param name="Days">Window after the repair, in days.</param>
/// <param name="Grouping">all, appliance_type, model_family, technician, complaint_kind, component or month (of the repair).</param>
/// <param name="Member">Which one.</param>
/// <param name="Repairs">Finished repairs of known units with a told complaint, followed for the whole window.</param>
/// <param name="Callbacks">Of them with a call on the same unit for the same complaint within the window.</param>
/// <param name="Share">Callbacks / repairs, or null if missing (see Missing).</param>
/// <param name="Lower">Lower end of Wilson's 95 % interval.</param>
/// <param name="Upper">Upper end.</param>
/// <param name="Returns">Of the repairs with any call on the same unit within the window.</param>
/// <param name="NotFollowed">Repairs whose window has not passed yet; they count for neither.</param>
/// <param name="Missing">Why there is no share; null when there is one.</param>
/// <param name="RestShare">The same share of all other repairs, this member's left out; null for all, or if there are no others.</param>
/// <param name="P">
/// Chance of so many callbacks or more if this member's repairs hold as the others do: mid-p of Fisher's exact test, all
/// totals fixed. Null where there is nothing to compare.
/// </param>
/// <param name="Q">The same after Benjamini and Hochberg (1995) over all members of the grouping and window.</param>
/// <param name="StandsOut">Q at most 0.10, at least 1.5 times the share of the rest, three callbacks or more.</param>
public sealed record CallbackShare(
    int Days, string Grouping, string Member, long Repairs, long Callbacks, double? Share, double? Lower, double? Upper, long Returns, long NotFollowed, string? Missing,
    double? RestShare, double? P, double? Q, bool StandsOut)
{
    private const string All = "all";

    /// <summary>Fewest repairs a share is given for.</summary>
    public const int FewestRepairs = 10;

    /// <summary>All windows and groups in a session where the callback tables were built.</summary>
    public static IReadOnlyList<CallbackShare> Table(Database database) => Create(database.ReadTable<CallbackCount>("callback_counts"), new EffectGate());

    /// <summary>Compares every member with the rest of its grouping, in the order of the counts.</summary>
    internal static IReadOnlyList<CallbackShare> Create(IReadOnlyList<CallbackCount> counts, EffectGate gate)
    {
        Dictionary<int, CallbackCount> totals = counts.Where(c => c.Grouping == All).ToDictionary(c => c.Days);
        double?[] p = [.. counts.Select(c => Luck(c, totals.GetValueOrDefault(c.Days)))];
        double?[] q = new double?[counts.Count];
        foreach (var compared in Enumerable.Range(0, counts.Count).Where(i => p[i] is not null).GroupBy(i => (counts[i].Days, counts[i].Grouping)))
        {
            int[] places = [.. compared];
            IReadOnlyList<double> adjusted = PValues.BenjaminiHochberg([.. places.Select(i => p[i]!.Value)]);
            for (int k = 0; k < places.Length; k++)
            {
                q[places[k]] = adjusted[k];
            }
        }

        return [.. counts.Select((c, i) => From(c, totals.GetValueOrDefault(c.Days), p[i], q[i], gate))];
    }

    private static double? Luck(CallbackCount count, CallbackCount? all)
    {
        if (all is null || count.Grouping == All || count.Repairs == 0 || all.Repairs == count.Repairs || all.Callbacks == 0)
        {
            return null;
        }

        FixedTotals[] totals = [new((int)all.Repairs, (int)all.Callbacks, (int)count.Repairs)];
        return (HypergeometricSum.AtLeast(totals, (int)count.Callbacks) + HypergeometricSum.AtLeast(totals, (int)count.Callbacks + 1)) / 2;
    }

    internal sealed record CallbackCount(
        int Days, [Column("grouping_kind")] string Grouping, string Member, long Repairs, long Callbacks, long Returns, long NotFollowed);

    private static CallbackShare From(CallbackCount c, CallbackCount? all, double? p, double? q, EffectGate gate)
    {
        long others = c.Grouping == All || all is null ? 0 : all.Repairs - c.Repairs;
        double? rest = others > 0 ? (double)(all!.Callbacks - c.Callbacks) / others : null;
        double? ratio = rest is null || c.Repairs == 0 ? null : rest > 0 ? c.Callbacks / (double)c.Repairs / rest : double.MaxValue;
        Estimate share = c.Repairs < FewestRepairs
            ? Estimate.None($"too few: {c.Repairs} of {FewestRepairs} repairs")
            : Proportion.Wilson(c.Callbacks, c.Repairs);
        return new CallbackShare(c.Days, c.Grouping, c.Member, c.Repairs, c.Callbacks, share.Value, share.Lower, share.Upper, c.Returns, c.NotFollowed, share.Missing, rest, p, q,
            gate.Passes(q, ratio, c.Callbacks));
    }
}
