using PartsSignal.Analysis.Statistics;
using PartsSignal.Analysis.Statistics.Distributions;
using PartsSignal.Analysis.Statistics.Intervals;
using PartsSignal.Analysis.Statistics.Shrinkage;

namespace PartsSignal.Analysis.Suppliers;

/// <summary>Compares suppliers component by component, so that one who sells more pumps is not blamed for pumps.</summary>
public static class SupplierQualityTable
{
    /// <summary>Fewest pieces or parts a share is given for.</summary>
    public const int Fewest = 10;

    private const string NoReturns = "no return is recorded";

    private sealed record Others(long Followed, long Failed);

    /// <summary>All suppliers and components, in the order of the counts.</summary>
    public static IReadOnlyList<SupplierPart> Create(IReadOnlyList<SupplierCount> counts, EffectGate gate)
    {
        Dictionary<string, Others> totals = counts.Where(c => c.Component is not null)
            .GroupBy(c => c.Component!)
            .ToDictionary(g => g.Key, g => new Others(g.Sum(c => c.Followed), g.Sum(c => c.Failed)));
        double[] expected = [.. counts.Select(c => c.Component is null
            ? counts.Where(o => o.Supplier == c.Supplier && o.Component is not null).Sum(o => Expected(o, totals))
            : Expected(c, totals))];
        // Whether returns are written down at all cannot be told where none ever was: unknown, not 0.
        HashSet<string> everReturned = [.. counts.Where(c => c.PiecesReturned > 0).Select(c => c.Supplier)];
        double?[] p = [.. counts.Select(c => Luck(c, totals))];
        Dictionary<int, double> q = Adjusted(p);
        Dictionary<int, Estimate> shrunk = Shrunk(counts, expected);
        return [.. counts.Select((c, i) => Row(c, totals, expected[i], everReturned, p[i], q.TryGetValue(i, out double a) ? a : null, shrunk.GetValueOrDefault(i), gate))];
    }

    private static double Expected(SupplierCount count, Dictionary<string, Others> totals)
    {
        Others all = totals[count.Component!];
        return all.Followed == 0 ? 0 : count.Followed * ((double)all.Failed / all.Followed);
    }

    // One-sided, given the component's failures: failures fall on a supplier in proportion to its parts. Half the chance of
    // the observed count is left out (mid-p), because whole tails of small counts are too careful.
    private static double? Luck(SupplierCount count, Dictionary<string, Others> totals)
    {
        if (count.Component is null || count.Followed == 0 || totals[count.Component] is not { Failed: > 0 } all || all.Followed == count.Followed)
        {
            return null;
        }

        var binomial = new BinomialDistribution(all.Failed, (double)count.Followed / all.Followed);
        return binomial.UpperTail(count.Failed) + (binomial.Pmf(count.Failed) / 2);
    }

    private static Dictionary<int, double> Adjusted(double?[] p)
    {
        int[] tested = [.. Enumerable.Range(0, p.Length).Where(i => p[i] is not null)];
        IReadOnlyList<double> q = PValues.BenjaminiHochberg([.. tested.Select(i => p[i]!.Value)]);
        return tested.Select((place, k) => (place, q[k])).ToDictionary(x => x.place, x => x.Item2);
    }

    private static Dictionary<int, Estimate> Shrunk(IReadOnlyList<SupplierCount> counts, double[] expected)
    {
        int[] cells = [.. Enumerable.Range(0, counts.Count).Where(i => counts[i].Component is not null && expected[i] > 0)];
        IReadOnlyList<Estimate> estimates = GammaPoissonShrinkage.Shrink([.. cells.Select(i => new CountGroup(counts[i].Failed, expected[i]))]);
        return cells.Select((place, k) => (place, estimates[k])).ToDictionary(x => x.place, x => x.Item2);
    }

    private static SupplierPart Row(
        SupplierCount count, Dictionary<string, Others> totals, double expected, HashSet<string> everReturned, double? p, double? q, Estimate? shrunk, EffectGate gate)
    {
        Estimate returned = everReturned.Contains(count.Supplier) ? Share(count.PiecesReturned, count.ToldPieces, "pieces") : Estimate.None(NoReturns);
        Estimate failed = Share(count.Failed, count.Followed, "parts");
        Others? all = count.Component is null ? null : totals[count.Component];
        Estimate? ratio = all is null ? null : RateRatio.Exact(count.Failed, count.Followed, all.Failed - count.Failed, all.Followed - count.Followed).Ratio;
        return new SupplierPart
        {
            Supplier = count.Supplier,
            Component = count.Component,
            Pieces = count.Pieces,
            PiecesReturned = count.PiecesReturned,
            ReturnShare = returned.Value,
            ReturnLower = returned.Lower,
            ReturnUpper = returned.Upper,
            ReturnMissing = returned.Missing,
            Followed = count.Followed,
            Failed = count.Failed,
            FailedShare = failed.Value,
            FailedLower = failed.Lower,
            FailedUpper = failed.Upper,
            OthersFollowed = all?.Followed - count.Followed,
            OthersFailed = all?.Failed - count.Failed,
            Expected = expected,
            Ratio = ratio?.Value,
            RatioLower = ratio?.Lower,
            RatioUpper = ratio?.Upper,
            ShrunkRatio = shrunk?.Value,
            ShrunkLower = shrunk?.Lower,
            ShrunkUpper = shrunk?.Upper,
            P = p,
            Q = q,
            StandsOut = gate.Passes(q, all?.Failed == count.Failed ? double.MaxValue : ratio?.Value, count.Failed),
            Missing = failed.Missing,
        };
    }

    private static Estimate Share(long some, long all, string what) => all < Fewest
        ? Estimate.None($"too few: {all} of {Fewest} {what}")
        : Proportion.Wilson(some, all);
}
