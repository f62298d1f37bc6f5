using PartsSignal.Analysis.Prediction;

namespace PartsSignal.Analysis.Tests.Prediction;

public sealed class StackTests
{
    private static readonly DateOnly Day = new(2024, 1, 1);

    [Fact]
    public void Odds_TwoMembers_AddsUpLogOddsByWeight()
    {
        var stack = new StackedPredictor([new Fixed(["a", "b"], [0.8, 0.2]), new Fixed(["b", "c"], [0.5, 0.5])], [1, 0]);
        Assert.Equal(["a", "b", "c"], stack.Needs);
        double[] odds = stack.Odds(new Call());
        Assert.Equal(0.8, odds[0], 5);
        Assert.Equal(1, odds.Sum(), 12);
        double[] pooled = new StackedPredictor([new Fixed(["a", "b"], [0.8, 0.2]), new Fixed(["a", "b"], [0.5, 0.5])], [0.5, 0.5]).Odds(new Call());
        Assert.Equal(2 / 3.0, pooled[0], 12);
    }

    [Fact]
    public void Fit_OneMemberTellsAndOneMisleads_TrustsTheFirstAlone()
    {
        Forecast[] tells = Answers((i, need) => need == i % 3 ? 0.6 : 0.2), misleads = Answers((i, need) => need == (i + 1) % 3 ? 0.6 : 0.2);
        double[] weights = StackWeights.Fit([tells, misleads]);
        Assert.True(weights[0] > 1);
        Assert.Equal(0, weights[1]);
    }

    [Fact]
    public void Fit_TwoHalvesOfTheTruth_BeatsEachAlone()
    {
        var random = new Random(7);
        double[][] first = [.. Enumerable.Range(0, 600).Select(_ => Shares(random))], second = [.. Enumerable.Range(0, 600).Select(_ => Shares(random))];
        int[] truth = [.. first.Select((p, i) => Draw(random, [.. p.Select((x, k) => x * second[i][k])]))];
        Forecast[] one = [.. first.Select((p, i) => Answer(i, p, truth[i]))], two = [.. second.Select((p, i) => Answer(i, p, truth[i]))];
        double[] weights = StackWeights.Fit([one, two]);
        Assert.All(weights, w => Assert.InRange(w, 0.75, 1.25));
    }

    [Fact]
    public void Fit_NoAnswers_SharesAlike() => Assert.Equal([0.5, 0.5], StackWeights.Fit([[], []]));

    private static Forecast[] Answers(Func<int, int, double> odds) =>
        [.. Enumerable.Range(0, 90).Select(i => Answer(i, [.. Enumerable.Range(0, 3).Select(k => odds(i, k))], i % 3))];

    private static Forecast Answer(int i, double[] odds, int truth) => new($"J{i}", Day, "washer", "no_fill", odds, truth);

    private static double[] Shares(Random random)
    {
        double[] shares = [.. Enumerable.Range(0, 4).Select(_ => Math.Exp(2 * random.NextDouble()))];
        double sum = shares.Sum();
        return [.. shares.Select(s => s / sum)];
    }

    private static int Draw(Random random, double[] weights)
    {
        double at = random.NextDouble() * weights.Sum();
        int k = 0;
        while (k < weights.Length - 1 && (at -= weights[k]) >= 0)
        {
            k++;
        }

        return k;
    }

    private sealed record Fixed(IReadOnlyList<string> Needs, double[] Answer) : IPredictor
    {
        public double[] Odds(Call call) => [.. Answer];
    }
}
