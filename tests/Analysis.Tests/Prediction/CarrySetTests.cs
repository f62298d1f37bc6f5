using PartsSignal.Analysis.Prediction;

namespace PartsSignal.Analysis.Tests.Prediction;

public sealed class CarrySetTests
{
    private static readonly DateOnly Day = new(2024, 1, 1);

    // Kinds from sure to unsure: the likeliest need has odds of about .80 down to .2 over nine needs.
    private static readonly (string Kind, double Sharpness)[] Kinds = [("no_drain", 0.78), ("no_fill", 0.6), ("leak", 0.45), ("not_cooling", 0.3), ("stops", 0.2)];

    [Fact]
    public void Members_ByHand_AreTheLikeliestUntilTheThresholdIsReached()
    {
        double[] odds = [0.1, 0.5, 0.3, 0.1];
        Assert.Equal([1], CarrySet.Members(odds, 0.5));
        Assert.Equal([1, 2], CarrySet.Members(odds, 0.51));
        Assert.Equal([1, 2, 0], CarrySet.Members(odds, 0.81));
        Assert.Equal([1], CarrySet.Members(odds, 0));
        Assert.Empty(CarrySet.Members([], 0.8));
    }

    [Fact]
    public void Score_ByHand_IsTheOddsBeforeTheTruth()
    {
        Forecast Of(int truth) => new("J", Day, "washer", "leak", [0.1, 0.5, 0.3, 0.1], truth);
        Assert.Equal([0.8, 0, 0.5, 0.9, 1], new[] { 0, 1, 2, 3, -1 }.Select(t => Math.Round(CarrySet.Score(Of(t)), 9)));
    }

    [Fact]
    public void Score_AnyCall_IsBelowTheThresholdExactlyWhenTheSetHoldsTheTruth()
    {
        var random = new Random(3);
        for (int i = 0; i < 2_000; i++)
        {
            Forecast forecast = Draw(random, Kinds[i % Kinds.Length]);
            double threshold = random.NextDouble();
            Assert.Equal(CarrySet.Members(forecast.Odds, threshold).Contains(forecast.Truth), CarrySet.Score(forecast) < threshold || forecast.Rank == 1);
        }
    }

    [Theory]
    [InlineData(0.80)]
    [InlineData(0.95)]
    public void Fit_SureAndUnsureKinds_AllAreCoveredAsPromised(double promise)
    {
        var random = new Random(5);
        CarryLimits limits = CarryLimits.Fit([.. Enumerable.Range(0, 1_500).Select(i => Draw(random, Kinds[i % Kinds.Length]))], promise);
        Forecast[] later = [.. Enumerable.Range(0, 20_000).Select(i => Draw(random, Kinds[i % Kinds.Length]))];
        Assert.InRange(Cover(later, limits), promise - 0.02, promise + 0.02);
        Assert.All(later.GroupBy(f => f.ComplaintKind), kind => Assert.InRange(Cover(kind, limits), promise - 0.04, promise + 0.04));
        Assert.All(later.GroupBy(f => f.ApplianceType), type => Assert.InRange(Cover(type, limits), promise - 0.04, promise + 0.04));
    }

    [Fact]
    public void Fit_OddsOfOneKindTooBold_ItsSetsAreWidened()
    {
        // The odds of unreadable complaints are sharper than the truth; cover must hold all the same.
        var random = new Random(8);
        Forecast One(int i) => i % 5 == 0 ? Bold(Draw(random, ("other", 0.35))) : Draw(random, Kinds[i % 5]);
        CarryLimits limits = CarryLimits.Fit([.. Enumerable.Range(0, 2_000).Select(One)], 0.8);
        Forecast[] other = [.. Enumerable.Range(0, 20_000).Select(One).Where(f => f.ComplaintKind == "other")];
        Assert.InRange(Cover(other, limits), 0.76, 0.84);
        Assert.True(limits.For("washer", "other") > limits.For("washer", "leak"));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(10)]
    [InlineData(60)]
    public void Fit_FewCalls_SetsAreWiderNotEmpty(int calls)
    {
        var random = new Random(11);
        double few = 0;
        for (int shop = 0; shop < 100; shop++)
        {
            CarryLimits limits = CarryLimits.Fit([.. Enumerable.Range(0, calls).Select(i => Draw(random, Kinds[i % Kinds.Length]))], 0.8);
            few += Cover([.. Enumerable.Range(0, 100).Select(i => Draw(random, Kinds[i % Kinds.Length]))], limits) / 100;
            Assert.All(Kinds, k => Assert.InRange(limits.For("washer", k.Kind), 0.6, 1));
        }

        Assert.InRange(few, 0.79, 0.96);
    }

    [Fact]
    public void Members_AnyCalibrationAndAnyCall_NeverContradictTheOdds()
    {
        var random = new Random(17);
        for (int shop = 0; shop < 60; shop++)
        {
            Forecast[] calls = [.. Enumerable.Range(0, random.Next(400)).Select(_ => Draw(random, Kinds[random.Next(Kinds.Length)]))];
            CarryLimits short1 = CarryLimits.Fit(calls, 0.8), long1 = CarryLimits.Fit(calls, 0.95);
            for (int i = 0; i < 40; i++)
            {
                Forecast call = Draw(random, ($"kind {i % 9}", 0.05 + 0.9 * random.NextDouble()));
                IReadOnlyList<int> few = short1.Members(call), many = long1.Members(call);
                Assert.True(few.Sum(k => call.Odds[k]) >= 0.6 - 1e-9 && many.Sum(k => call.Odds[k]) >= 0.9 - 1e-9);
                Assert.Equal(few, many.Take(few.Count));
                double leastInside = many.Min(k => call.Odds[k]);
                Assert.All(Enumerable.Range(0, call.Odds.Length).Except(many), k => Assert.True(call.Odds[k] <= leastInside));
            }
        }
    }

    [Fact]
    public void Covers_NeedNeverSeen_IsNotCovered() =>
        Assert.False(CarryLimits.Fit([], 0.95).Covers(new Forecast("J", Day, "range", "leak", [1], -1)));

    private static double Cover(IEnumerable<Forecast> forecasts, CarryLimits limits) => forecasts.Average(f => limits.Covers(f) ? 1.0 : 0.0);

    private static Forecast Draw(Random random, (string Kind, double Sharpness) kind)
    {
        double first = Math.Clamp(kind.Sharpness + 0.3 * (random.NextDouble() - 0.5), 0.12, 0.97), left = 1 - first;
        var odds = new double[9];
        odds[0] = first;
        for (int k = 1; k < odds.Length; k++)
        {
            odds[k] = k == odds.Length - 1 ? left : left * (0.15 + 0.4 * random.NextDouble());
            left -= odds[k];
        }

        double at = random.NextDouble();
        int truth = 0;
        while (truth < odds.Length - 1 && (at -= odds[truth]) >= 0)
        {
            truth++;
        }

        return new Forecast("J", Day, random.Next(2) == 0 ? "washer" : "dryer", kind.Kind, odds, truth);
    }

    private static Forecast Bold(Forecast forecast) => forecast with { Odds = TemperatureScaling.Apply(forecast.Odds, 0.7) };
}
