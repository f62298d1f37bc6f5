using System.Text.Json.Nodes;
using CsCheck;
using PartsSignal.Analysis.AgeCurves;
using PartsSignal.Analysis.Statistics;

namespace PartsSignal.Analysis.Tests.AgeCurves;

public sealed class MeanCumulativeFunctionTests
{
    [Fact]
    public void Estimate_ValveSeats_MatchesReference()
    {
        Oracle oracle = Oracle.Named("mcf_valve_seat");
        RepairHistory[] engines =
            [.. oracle.Inputs["data"]!.AsArray().Select(e => new RepairHistory([new Watch(0, (double)e!["end"]!)], Oracle.Numbers(e["repairs"])))];
        IReadOnlyList<MeanRepairsPoint> points = MeanCumulativeFunction.Estimate(engines).Points;
        MeanRepairsPoint[] asked = [.. Oracle.Numbers(oracle.Expected["query_age"]).Select(a => points.Last(p => p.Age <= a))];
        oracle.Close(oracle.Expected["mcf"], [.. asked.Select(p => p.Mean)]);
        oracle.Close(oracle.Expected["var_lawless_nadeau"], [.. asked.Select(p => p.RobustVariance)]);
        oracle.Close(oracle.Expected["var_poisson"], [.. asked.Select(p => p.PoissonVariance)]);
        Assert.Equal(48, points.Sum(p => p.Repairs));
    }

    [Fact]
    public void Estimate_LateEntry_MatchesReferenceAndVarianceMayFall()
    {
        Oracle oracle = Oracle.Named("mcf_small_late_entry");
        IReadOnlyList<MeanRepairsPoint> points = MeanCumulativeFunction.Estimate(Histories(oracle.Inputs)).Points;
        oracle.Close(oracle.Expected["event_time"], [.. points.Select(p => p.Age)]);
        oracle.Close(oracle.Expected["n_risk"], [.. points.Select(p => (double)p.AtRisk)]);
        oracle.Close(oracle.Expected["n_event"], [.. points.Select(p => (double)p.Repairs)]);
        oracle.Close(oracle.Expected["mcf"], [.. points.Select(p => p.Mean)]);
        oracle.Close(oracle.Expected["var_lawless_nadeau"], [.. points.Select(p => p.RobustVariance)]);
        oracle.Close(oracle.Expected["var_poisson"], [.. points.Select(p => p.PoissonVariance)]);
        Assert.True(points[2].RobustVariance < points[1].RobustVariance);
    }

    [Fact]
    public void Estimate_AnyHistories_RobustVarianceIsTheSumOverUnits() =>
        Gen.Select(Gen.Int[0, 10], Gen.Int[1, 10], Gen.Int[0, 4], Gen.Int[1, 10], Gen.Double[0, 0.999].Array[0, 4]).Array[1, 12].ForAll(units =>
        {
            RepairHistory[] histories = [.. units.Select(u => WithGap(u.Item1, u.Item2, u.Item3, u.Item4, u.Item5))];
            Assert.All(MeanCumulativeFunction.Estimate(histories).Points, p => Assert.Equal(BySum(histories, p.Age), p.RobustVariance, tolerance: 1e-10));
        });

    [Fact]
    public void Estimate_BadHistories_AreNamedAndTheRestCounts()
    {
        var mean = MeanCumulativeFunction.Estimate(
            [new([new Watch(0, 5)], [6]), new([new Watch(0, 5)], [2]), new([new Watch(3, 3)], []), new([new Watch(0, double.NaN)], [])]);
        Assert.Equal(
            [
                new BadRow(0, "a repair lies outside the watched ages"),
                new BadRow(2, "a stretch ends no later than it begins, or overlaps the one before"),
                new BadRow(3, "an age is missing"),
            ],
            mean.Rejected);
        Assert.Equal((1L, 1.0), (Assert.Single(mean.Points).AtRisk, mean.Points[0].Mean));
    }

    private static RepairHistory WithGap(int from, int stay, int gap, int again, double[] shares)
    {
        Watch[] watched = [new(from, from + stay), new(from + stay + gap, from + stay + gap + again)];
        double[] repairs = [.. shares.Select((s, i) => i % 2 == 0 ? watched[0].To - Math.Floor(s * stay) : watched[1].To - Math.Floor(s * again))];
        return new RepairHistory(watched, repairs);
    }

    private static double BySum(RepairHistory[] histories, double age)
    {
        double[] ages = [.. histories.SelectMany(h => h.Repairs).Distinct().Where(a => a <= age)];
        bool AtRisk(RepairHistory h, double a) => h.Watched.Any(w => w.From < a && a <= w.To);
        return histories.Sum(h => Math.Pow(
            ages.Where(a => AtRisk(h, a)).Sum(a =>
            {
                double n = histories.Count(o => AtRisk(o, a));
                double all = histories.Sum(o => o.Repairs.Count(r => r == a));
                return (h.Repairs.Count(r => r == a) - all / n) / n;
            }),
            2));
    }

    private static RepairHistory[] Histories(JsonNode inputs)
    {
        int[] ids = Oracle.Wholes(inputs["id"]);
        double[] start = Oracle.Numbers(inputs["start"]);
        double[] stop = Oracle.Numbers(inputs["stop"]);
        int[] events = Oracle.Wholes(inputs["event"]);
        return [.. ids.Select((id, i) => (id, i)).GroupBy(p => p.id, p => p.i).Select(rows =>
            new RepairHistory([.. rows.Select(i => new Watch(start[i], stop[i]))], [.. rows.Where(i => events[i] == 1).Select(i => stop[i])]))];
    }
}
