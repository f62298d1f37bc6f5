using PartsSignal.Analysis.AgeCurves;
using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Statistics;
using PartsSignal.Analysis.Tests.Fixtures;
using static PartsSignal.Analysis.Tests.AgeCurves.CurveStore;

namespace PartsSignal.Analysis.Tests.AgeCurves;

/// <summary>Shapes of parts in families that differ, on machines that were in use before the log began.</summary>
public sealed class PartLifeTests(ITestOutputHelper output)
{
    private const double LogYears = 6;

    /// <summary>
    /// Twelve families whose scales differ, each part replaced when it fails; half of the machines are older than the log.
    /// A fit by machine age over all families calls this wear flatter than it is.
    /// </summary>
    [Theory]
    [InlineData(2.2, 3.0)]
    [InlineData(1.0, 6.0)]
    [InlineData(0.75, 8.0)]
    public void Shape_OfFamiliesThatDiffer_IsThatOfAPart(double shape, double scale)
    {
        const int worlds = 200;
        var tally = new CoverageTally();
        double sum = 0, naive = 0;
        for (int world = 0; world < worlds; world++)
        {
            (PartService[] families, AgeLedger byMachineAge) = World(new Random(world), shape, scale);
            Estimate found = PartLife.Shape(families);
            sum += Math.Log(found.Value!.Value);
            naive += Math.Log(WeibullFit.FromLedger(byMachineAge).Shape.Value!.Value);
            tally.Add("shape", shape, found.Lower, found.Upper ?? double.MaxValue);
        }

        output.WriteLine($"shape {shape}: mean {Math.Exp(sum / worlds):0.00}, by machine age {Math.Exp(naive / worlds):0.00}; {tally.Report}");
        Assert.InRange(Math.Exp(sum / worlds), 0.95 * shape, 1.06 * shape);
        tally.Between(0.92, 0.985);
        if (shape > 2)
        {
            Assert.True(Math.Exp(naive / worlds) < 0.8 * shape);
        }
    }

    [Fact]
    public void PartLedger_CountsOnlyPartsThatWereSeenPutInUse()
    {
        using Database database = Open(
            [Registered("new", new(2021, 1, 1)), Registered("idle", new(2022, 1, 1)), Registered("old", new(2015, 1, 1))],
            [
                Call("1", "new", new(2022, 1, 1), "drain_pump"), Call("2", "new", new(2023, 1, 1), "drain_pump"),
                Call("3", "old", new(2021, 1, 1), "drain_pump"), Call("4", "old", new(2022, 1, 1), "drain_pump"),
            ]);
        // new: 365 days, 365 days and still serving; idle: still serving; old: its first part may be of any age, the next served 365 days
        Assert.Equal(
            [(365, 3, 3), (LastDay.DayNumber - new DateOnly(2023, 1, 1).DayNumber, 1, 0), (LastDay.DayNumber - new DateOnly(2022, 1, 1).DayNumber, 2, 0)],
            database.Query("from part_ledger", r => (r.Int(3), r.Int(4), r.Int(5))));
    }

    [Fact]
    public void Shape_TooFewOrOneTime_SaysSo()
    {
        Assert.Equal("no part that we saw put in use has failed", PartLife.Shape([]).Missing);
        Assert.Equal("fewer than 3 failures of parts that we saw put in use", PartLife.Shape([new PartService([new(1, 5, 2)])]).Missing);
        Assert.StartsWith("all failures are at one age", PartLife.Shape([new PartService([new(1, 5, 3)])]).Missing, StringComparison.Ordinal);
    }

    [Fact]
    public void Shape_OtherUnitOfTime_IsTheSame()
    {
        (PartService[] families, _) = World(new Random(1), 2.2, 3);
        Estimate days = PartLife.Shape([.. families.Select(f => new PartService([.. f.Ends.Select(e => e with { Time = 365.25 * e.Time })]))]);
        Assert.Equal(PartLife.Shape(families).Value!.Value, days.Value!.Value, tolerance: 1e-3);
    }

    private static (PartService[] Families, AgeLedger ByMachineAge) World(Random random, double shape, double scale)
    {
        var families = new List<PartService>();
        var ages = new List<AgeSpan>();
        for (int f = 0; f < 12; f++)
        {
            double own = scale * Math.Exp(0.45 * Normal(random));
            var ends = new List<ServiceEnd>();
            for (int i = 0; i < 12; i++)
            {
                // installed up to six years before the log, or in it; watched for six years
                double installed = (12 * random.NextDouble()) - 6, end = LogYears - installed, entry = Math.Max(0, -installed);
                double start = 0;
                bool seen = installed >= 0, first = true;
                while (true)
                {
                    double next = start + (own * Math.Pow(-Math.Log(1 - random.NextDouble()), 1 / shape));
                    if (seen)
                    {
                        ends.Add(new ServiceEnd(Math.Min(next, end) - start, 1, next <= end ? 1 : 0));
                    }

                    if (next > entry && first)
                    {
                        ages.Add(new AgeSpan(entry, Math.Min(next, end), next <= end ? 1 : 0));
                        first = false;
                    }

                    if (next >= end)
                    {
                        break;
                    }

                    (start, seen) = (next, seen || next > entry);
                }
            }

            families.Add(new PartService([.. ends.Where(e => e.Time > 1e-9)]));
        }

        return ([.. families], AgeLedger.From(ages));
    }

    private static double Normal(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
