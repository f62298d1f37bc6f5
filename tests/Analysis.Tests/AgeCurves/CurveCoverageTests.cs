using PartsSignal.Analysis.AgeCurves;
using PartsSignal.Analysis.Tests.Fixtures;

namespace PartsSignal.Analysis.Tests.AgeCurves;

/// <summary>Every kind of interval that a curve is published with, on fleets whose lives are known.</summary>
public sealed class CurveCoverageTests(ITestOutputHelper output)
{
    private const int Worlds = 1000;
    private const double LogYears = 7;
    private static readonly WeibullLife Wear = new(2, 5);
    private static readonly WeibullLife Early = new(0.7, 20);

    [SlowFact]
    public void SurvivalAndMedian_HoldTheTruth_InNinetyThreeToNinetySevenOfAHundred()
    {
        var tally = new CoverageTally();
        for (int world = 0; world < Worlds; world++)
        {
            var random = WorldSeed.Random(world);
            KaplanMeier curve = KaplanMeier.Estimate(AgeLedger.From([.. Watched(random, 150).Select(w => Span(w, Life(random, Wear)))
                .Where(s => s.Entry < s.Exit)]));
            foreach (int age in (int[])[2, 3, 5])
            {
                SurvivalPoint at = curve.Points.Last(p => p.Age <= age);
                tally.Add($"survival at {age} years", Wear.Survival(age), at.Lower, at.Upper);
            }

            LifeQuantile median = LifeQuantile.Median(curve);
            tally.Add("median age", Wear.Quantile(0.5), median.Lower, median.Upper ?? double.MaxValue);
        }

        Report(tally);
    }

    [SlowFact]
    public void CompetingCauses_HoldTheTruth_InNinetyThreeToNinetySevenOfAHundred()
    {
        var tally = new CoverageTally();
        for (int world = 0; world < Worlds; world++)
        {
            var random = WorldSeed.Random(10_000 + world);
            AgeSpan[] spans = [.. Watched(random, 300).Select(w => (w, Life(random, Wear), Life(random, Early)))
                .Select(x => Span(x.w, Math.Min(x.Item2, x.Item3), x.Item2 < x.Item3 ? 1 : 2)).Where(s => s.Entry < s.Exit)];
            IReadOnlyList<CompetingPoint> steps = AalenJohansen.Estimate(spans, 2);
            foreach (int age in (int[])[3, 5])
            {
                CompetingPoint at = steps.Last(p => p.Age <= age);
                for (int k = 0; k < 2; k++)
                {
                    (double Lower, double Upper)? interval = Interval95.LogLog(at.ByCause[k].Share, Math.Sqrt(at.ByCause[k].AalenVariance));
                    tally.Add($"cause {k + 1} by {age} years", Incidence(k == 0 ? Wear : Early, age), interval?.Lower, interval?.Upper);
                }
            }
        }

        Report(tally);
    }

    [SlowFact]
    public void MeanRepairs_OfUnitsThatDiffer_HoldTheTruth_InNinetyThreeToNinetySevenOfAHundred()
    {
        var tally = new CoverageTally();
        for (int world = 0; world < Worlds; world++)
        {
            var random = WorldSeed.Random(20_000 + world);
            RepairHistory[] fleet = [.. Watched(random, 120).Where(w => w.Entry < w.End).Select(w => History(random, w))];
            IReadOnlyList<MeanRepairsPoint> steps = MeanCumulativeFunction.Estimate(fleet).Points;
            foreach (int age in (int[])[2, 4, 6])
            {
                MeanRepairsPoint at = steps.Last(p => p.Age <= age);
                tally.Add($"repairs by {age} years", 0.3 * age, at.Lower, at.Upper);
            }
        }

        Report(tally);
    }

    /// <summary>Log-only curves with few failures, their Weibull form: a share given that it fails by an age.</summary>
    [SlowFact]
    public void SharesFromTheLogAlone_HoldTheTruth_InNinetyThreeToNinetySevenOfAHundred()
    {
        const double until = 12;
        var tally = new CoverageTally();
        for (int world = 0; world < Worlds; world++)
        {
            WeibullFit fit = WeibullFit.FromTruncated(Log(WorldSeed.Random(30_000 + world), 90, until));
            foreach (int age in (int[])[3, 5, 8])
            {
                if (fit.Life is not null && ConditionalShare.From(fit, age, until) is { Lower: not null } share)
                {
                    tally.Add($"share by {age} years", ConditionalShare.Value01(Wear, age, until), share.Lower, share.Upper);
                }
            }
        }

        Report(tally);
    }

    /// <summary>Log-only curves with many failures: no form is supposed.</summary>
    [SlowFact]
    public void SharesFromTheLogAloneWithoutAForm_HoldTheTruth_InNinetyThreeToNinetySevenOfAHundred()
    {
        var tally = new CoverageTally();
        for (int world = 0; world < Worlds; world++)
        {
            TruncatedDistribution found = DoublyTruncated.EstimateComparable(Log(WorldSeed.Random(40_000 + world), 200, 12));
            foreach (int age in (int[])[3, 5, 7])
            {
                if (found.Points.LastOrDefault(p => p.Age <= age) is { } at)
                {
                    double before = ConditionalShare.Value01(Wear, found.From, found.Until);
                    double truth = (ConditionalShare.Value01(Wear, age, found.Until) - before) / (1 - before);
                    tally.Add($"free share by {age} years", truth, at.Interval?.Lower, at.Interval?.Upper);
                }
            }
        }

        Report(tally);
    }

    private void Report(CoverageTally tally)
    {
        output.WriteLine(tally.Report);
        tally.Between(0.93, 0.97);
    }

    // Appliances installed from three years before the log to six years into it; watched from the later of the two.
    private static IEnumerable<(double Entry, double End)> Watched(Random random, int units)
    {
        for (int i = 0; i < units; i++)
        {
            double installed = random.NextDouble() * 9 - 3;
            yield return (Math.Max(0, -installed), LogYears - installed);
        }
    }

    private static AgeSpan Span((double Entry, double End) watched, double life, int cause = 1) =>
        new(watched.Entry, Math.Min(life, watched.End), life <= watched.End ? cause : AgeSpan.Working);

    // Repairs come at 0.3 a year on the mean, on some appliances four times as often as on others.
    private static RepairHistory History(Random random, (double Entry, double End) watched)
    {
        double rate = random.NextDouble() < 0.5 ? 0.12 : 0.48;
        var repairs = new List<double>();
        for (double age = watched.Entry + Gap(random, rate); age <= watched.End; age += Gap(random, rate))
        {
            repairs.Add(age);
        }

        return new RepairHistory([new Watch(watched.Entry, watched.End)], repairs);
    }

    private static TruncatedAge[] Log(Random random, int failures, double until)
    {
        var seen = new List<TruncatedAge>();
        while (seen.Count < failures)
        {
            double made = random.NextDouble() * 18 - 11, life = Life(random, Wear);
            if (life > Math.Max(0, -made) && life <= Math.Min(until, LogYears - made))
            {
                seen.Add(new TruncatedAge(life, Math.Max(0, -made), Math.Min(until, LogYears - made)));
            }
        }

        return [.. seen];
    }

    // Integral of the cause's hazard times the chance that neither has struck yet.
    private static double Incidence(WeibullLife cause, double age)
    {
        const int steps = 20_000;
        double width = age / steps;
        return Enumerable.Range(0, steps).Select(i => (i + 0.5) * width)
            .Sum(t => cause.Hazard(t) * Wear.Survival(t) * Early.Survival(t) * width);
    }

    private static double Life(Random random, WeibullLife life) => life.Scale * Math.Pow(-Math.Log(1 - random.NextDouble()), 1 / life.Shape);

    private static double Gap(Random random, double rate) => -Math.Log(1 - random.NextDouble()) / rate;
}
