using PartsSignal.Analysis.AgeCurves;

namespace PartsSignal.Analysis.Tests.AgeCurves;

/// <summary>Fleets whose lives are known: intervals hold the truth as often as they say, truncated logs lead back to it.</summary>
public sealed class CurveRecoveryTests(ITestOutputHelper output)
{
    private const double Shape = 2;
    private const double Scale = 9;
    private const double LogYears = 7;
    private static readonly WeibullLife Truth = new(Shape, Scale);

    [SlowFact]
    public void RegisteredFleets_IntervalsCoverTheTruth_InNinetyThreeToNinetySevenOfAHundred()
    {
        const int worlds = 1000;
        int shape = 0, scale = 0, survival = 0;
        double atThree = Truth.Survival(3);
        for (int world = 0; world < worlds; world++)
        {
            var ledger = AgeLedger.From(Fleet(new Random(world), 120));
            WeibullFit fit = WeibullFit.FromLedger(ledger);
            shape += Holds(Shape, fit.Shape.Lower, fit.Shape.Upper);
            scale += Holds(Scale, fit.Scale.Lower, fit.Scale.Upper);
            SurvivalPoint at = KaplanMeier.Estimate(ledger).Points.Last(p => p.Age <= 3);
            survival += Holds(atThree, at.Lower, at.Upper);
        }

        output.WriteLine($"of {worlds}: shape {shape}, scale {scale}, survival at 3 years {survival}");
        Assert.All([shape, scale, survival], c => Assert.InRange((double)c / worlds, 0.93, 0.97));
    }

    [SlowFact]
    public void Logs_DoubleTruncation_LeadsBackToTheConditionalDistribution()
    {
        const int worlds = 200;
        double[] ages = [2, 4, 6, 8, 10];
        double[] found = new double[ages.Length], naive = new double[ages.Length];
        int formed = 0;
        double until = 18;
        for (int world = 0; world < worlds; world++)
        {
            TruncatedAge[] log = Log(new Random(world), 600, until);
            TruncatedDistribution free = DoublyTruncated.EstimateComparable(log);
            WeibullFit fit = WeibullFit.FromTruncated(log);
            formed += Holds(Shape, fit.Shape.Lower, fit.Shape.Upper);
            for (int i = 0; i < ages.Length; i++)
            {
                double share = free.Points.LastOrDefault(p => p.Age <= ages[i])?.Share ?? 0;
                double end = ConditionalShare.Value01(Truth, free.Until, until);
                found[i] += share * end / worlds;
                naive[i] += (double)log.Count(f => f.Age <= ages[i]) / log.Length / worlds;
            }
        }

        double[] truth = [.. ages.Select(a => ConditionalShare.Value01(Truth, a, until))];
        output.WriteLine($"truth {Show(truth)}; corrected {Show(found)}; naive {Show(naive)}; shape covered {formed} of {worlds}");
        Assert.All(truth.Zip(found), p => Assert.Equal(p.First, p.Second, tolerance: 0.03));
        Assert.True(truth.Zip(naive).Max(p => Math.Abs(p.First - p.Second)) > 0.05);
        Assert.InRange((double)formed / worlds, 0.91, 0.985);
    }

    // Appliances installed from three years before the log to six years into it; watched from the later of the two.
    private static AgeSpan[] Fleet(Random random, int units)
    {
        var spans = new List<AgeSpan>();
        while (spans.Count < units)
        {
            double installed = random.NextDouble() * 9 - 3;
            double life = Life(random);
            double entry = Math.Max(0, -installed);
            double exit = Math.Min(life, LogYears - installed);
            if (life > entry)
            {
                spans.Add(new AgeSpan(entry, exit, life <= LogYears - installed ? 1 : 0));
            }
        }

        return [.. spans];
    }

    // Appliances built from eleven years before the log to its end; only failures within the log are seen.
    private static TruncatedAge[] Log(Random random, int failures, double until)
    {
        var seen = new List<TruncatedAge>();
        while (seen.Count < failures)
        {
            double made = random.NextDouble() * 18 - 11;
            double life = Life(random);
            if (life > Math.Max(0, -made) && life <= LogYears - made)
            {
                seen.Add(new TruncatedAge(life, Math.Max(0, -made), Math.Min(until, LogYears - made)));
            }
        }

        return [.. seen];
    }

    private static double Life(Random random) => Scale * Math.Pow(-Math.Log(1 - random.NextDouble()), 1 / Shape);

    private static int Holds(double truth, double? lower, double? upper) => lower <= truth && (upper is null || truth <= upper) ? 1 : 0;

    private static string Show(double[] values) => string.Join(" ", values.Select(v => v.ToString("0.000", System.Globalization.CultureInfo.InvariantCulture)));
}
