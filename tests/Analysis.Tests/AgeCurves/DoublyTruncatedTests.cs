using CsCheck;
using PartsSignal.Analysis.AgeCurves;
using PartsSignal.Analysis.Statistics;

namespace PartsSignal.Analysis.Tests.AgeCurves;

public sealed class DoublyTruncatedTests
{
    [Fact]
    public void Estimate_AgesInALog_MatchesReference()
    {
        Oracle oracle = Oracle.Named("doubly_truncated_age_at_failure");
        double[] left = Oracle.Numbers(oracle.Inputs["left"]);
        double[] right = Oracle.Numbers(oracle.Inputs["right"]);
        TruncatedDistribution found = DoublyTruncated.Estimate(
            [.. Oracle.Numbers(oracle.Inputs["age"]).Select((a, i) => new TruncatedAge(a, left[i], right[i]))]);
        oracle.Close(oracle.Expected["mass"], [.. found.Points.Select(p => p.Mass)]);
        oracle.Close(oracle.Expected["cdf"], [.. found.Points.Select(p => p.Share)]);
    }

    [Fact]
    public void Estimate_WindowsThatHideNothing_IsTheShareFailedByEachAge() =>
        Assert.All(
            DoublyTruncated.Estimate([new(1, 0, 9), new(2, 0, 9), new(2, 0, 9), new(5, 0, 9)]).Points.Zip([0.25, 0.75, 1.0]),
            p => Assert.Equal(p.Second, p.First.Share, tolerance: 1e-9));

    [Fact]
    public void Estimate_WindowsThatHideNothing_StandardErrorIsThatOfAShare() =>
        Assert.All(
            DoublyTruncated.Estimate([new(1, 0, 9), new(2, 0, 9), new(2, 0, 9), new(5, 0, 9)]).Points.Zip([0.25, 0.75]),
            p => Assert.Equal(Math.Sqrt(p.Second * (1 - p.Second) / 4), p.First.StandardError!.Value, tolerance: 1e-9));

    [Fact]
    public void Estimate_OnlyRightTruncated_StandardErrorAgreesWithReverseTime()
    {
        var random = new Random(3);
        RightTruncatedAge[] ages = [.. Enumerable.Range(0, 400).Select(_ => new RightTruncatedAge(Math.Ceiling(20 * random.NextDouble()), 30 * random.NextDouble())).Where(a => a.Age <= a.Latest)];
        TruncatedDistribution found = DoublyTruncated.Estimate([.. ages.Select(a => new TruncatedAge(a.Age, 0, a.Latest))]);
        foreach ((ConditionalPoint reverse, TruncatedPoint point) in ReverseTime.Estimate(ages).Zip(found.Points).Where(p => p.First is { Lower: not null, Share: > 0.05 and < 0.95 }))
        {
            Assert.Equal(1, (point.Interval!.Value.Upper - point.Interval.Value.Lower) / (reverse.Upper!.Value - reverse.Lower!.Value), tolerance: 0.05);
        }
    }

    [Fact]
    public void Estimate_OnlyRightTruncated_AgreesWithReverseTime()
    {
        Oracle oracle = Oracle.Named("right_truncated_age_at_first_failure");
        double[] latest = Oracle.Numbers(oracle.Inputs["truncation_age"]);
        TruncatedAge[] failures = [.. Oracle.Numbers(oracle.Inputs["age"]).Select((a, i) => new TruncatedAge(a, 0, latest[i]))];
        TruncatedDistribution found = DoublyTruncated.Estimate(failures);
        double[] expected = Oracle.Numbers(oracle.Expected["F_conditional"]);
        Assert.All(found.Points.Zip(expected), p => Assert.Equal(p.Second, p.First.Share, tolerance: 1e-6));
    }

    [Fact]
    public void Estimate_WindowsApart_SaysThatAgesCannotBeCompared()
    {
        TruncatedDistribution found = DoublyTruncated.Estimate([new(1, 0, 2), new(1.5, 0, 2), new(8, 7, 9), new(8.5, 7, 9)]);
        Assert.Empty(found.Points);
        Assert.NotNull(found.Missing);
    }

    [Fact]
    public void Estimate_OneWayConnection_SaysThatAgesCannotBeCompared() =>
        Assert.NotNull(DoublyTruncated.Estimate([new(1, 0, 9), new(5, 4, 9)]).Missing);

    [Fact]
    public void Estimate_NothingFailed_SaysSo() => Assert.NotNull(DoublyTruncated.Estimate([]).Missing);

    [Fact]
    public void Estimate_BadFailures_AreNamedAndTheRestCounts()
    {
        TruncatedAge[] good = [new(1, 0, 9), new(2, 0, 9), new(2, 0, 9), new(5, 0, 9)];
        TruncatedAge[] failures = [new(10, 0, 9), .. good, new(1, double.NaN, 9), new(0, 0, 9)];
        BadRow[] bad = [new(0, "failed outside the time of the log"), new(5, "an age is missing"), new(6, "failed, or watched, before it was made")];
        TruncatedDistribution plain = DoublyTruncated.Estimate(failures), comparable = DoublyTruncated.EstimateComparable(failures);
        Assert.Equal(bad, plain.Rejected);
        Assert.Equal(bad, comparable.Rejected);
        Assert.Equal(DoublyTruncated.Estimate(good).Points, plain.Points);
        Assert.Equal(plain.Points, comparable.Points);
        Assert.Equal(0, comparable.LeftOut);
        Assert.Equal(bad, WeibullFit.FromTruncated(failures).Rejected);
        Assert.Equal(WeibullFit.FromTruncated(good).Life, WeibullFit.FromTruncated(failures).Life);
    }

    [Fact]
    public void Estimate_AnyOrderOrUnit_GivesTheSameShares() =>
        Gen.Select(Gen.Int[1, 30], Gen.Int[0, 10], Gen.Int[0, 10]).Array[2, 25].ForAll(rows =>
        {
            TruncatedAge[] failures = [.. rows.Select(r => new TruncatedAge(r.Item1, Math.Max(0, r.Item1 - r.Item2), r.Item1 + r.Item3))];
            TruncatedDistribution once = DoublyTruncated.Estimate(failures);
            TruncatedDistribution again = DoublyTruncated.Estimate(
                [.. failures.Reverse().Select(f => new TruncatedAge(f.Age * 365.25, f.Earliest * 365.25, f.Latest * 365.25))]);
            Assert.Equal(once.Missing is null, again.Missing is null);
            Assert.All(once.Points.Zip(again.Points), p => Assert.Equal(p.First.Share, p.Second.Share, tolerance: 1e-7));
        });
}
