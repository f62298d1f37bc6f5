using System.Runtime.InteropServices;
using PartsSignal.Analysis.Statistics.Distributions;
using PartsSignal.Analysis.Trends;

namespace PartsSignal.Analysis.Tests.Trends;

/// <summary>What an alarm says of itself, on counts whose truth is known.</summary>
public sealed class AlarmHonestyTests(ITestOutputHelper output)
{
    private const double Baseline = 36;
    private static readonly TrendOptions Options = new();
    private static readonly SeriesKey Key = new("washer", "drain_pump", "F1");

    // Among 279 series a month's count must reach about p = 3.6e-4, not 0.005.
    [Theory]
    [InlineData(0.75)]
    [InlineData(2)]
    [InlineData(5)]
    public void DetectableRatio_AtTheChanceAskedFor_IsFoundFourTimesInFive(double mean)
    {
        double askedFor = Options.Gate.Q / 279;
        SeriesTest test = Test((long)(mean * Baseline), 0);
        long count = AlarmLimit.Of(test, askedFor, Options);
        double ratio = new AlarmLimit(count, askedFor).DetectableRatio(test.Expected)!.Value;
        double power = new PoissonDistribution(ratio * test.Expected).UpperTail(count - 1);
        Assert.Equal(0.8, power, 6);
        Assert.True(new PredictiveTail(test.Baseline, test.Exposure).MidP(count) <= askedFor);
        Assert.True(count == Options.Gate.Fewest(test.Expected) || new PredictiveTail(test.Baseline, test.Exposure).MidP(count - 1) > askedFor);
    }

    // Given an alarm, the plain exact interval held the truth in 0, 20 and 78 % of cases at 0.75, 2 and 5 a month.
    [Fact]
    public void LeastRatio_GivenAnAlarm_IsAboveTheTruthSeldom() => AssertSeldomAbove(0.75);

    [LongTheory]
    [InlineData(2)]
    [InlineData(5)]
    public void LeastRatio_GivenAnAlarmOfLargerCounts_IsAboveTheTruthSeldom(double mean) => AssertSeldomAbove(mean);

    private void AssertSeldomAbove(double mean)
    {
        var random = new Random(11);
        var limits = new Dictionary<long, long>();
        foreach (double truth in new[] { 1.0, 1.5, 2, 3, 5 })
        {
            int alarms = 0, above = 0;
            for (int i = 0; i < 20000 || (alarms < 400 && i < 400000); i++)
            {
                long events = Draw(random, mean * Baseline), seen = Draw(random, mean * truth);

                // What was seen does not move the limit.
                ref long limit = ref CollectionsMarshal.GetValueRefOrAddDefault(limits, events, out bool known);
                limit = known ? limit : AlarmLimit.Of(Test(events, seen), Options.Gate.Q / 279, Options);
                if (seen >= limit)
                {
                    alarms++;
                    above += SelectedRatio.AtLeast(Test(events, seen), limit) > truth ? 1 : 0;
                }
            }

            output.WriteLine($"mean {mean}, truth {truth}: {alarms} alarms, bound above the truth in {(double)above / Math.Max(1, alarms):0.000}");
            Assert.InRange(above, 0, 0.025 * alarms + 4 * Math.Sqrt(0.025 * alarms) + 1);
        }
    }

    private static SeriesTest Test(long events, long seen)
    {
        var baseline = new Baseline(events, Baseline);
        return new SeriesTest(Key, 0, baseline, (int)Baseline, 1, 1, new PredictiveTail(baseline, 1).Expected, seen, new PredictiveTail(baseline, 1).MidP(seen));
    }

    private static long Draw(Random random, double mean) => new PoissonDistribution(mean).Quantile(random.NextDouble());
}
