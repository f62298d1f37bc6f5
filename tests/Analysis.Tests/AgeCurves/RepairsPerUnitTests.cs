using PartsSignal.Analysis.AgeCurves;
using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Tests.Fixtures;

namespace PartsSignal.Analysis.Tests.AgeCurves;

/// <summary>Mean repairs by age on registers whose rate is known, thin young ages among them.</summary>
public sealed class RepairsPerUnitTests(ITestOutputHelper output)
{
    private static readonly DateOnly LogStart = new(2019, 1, 1);
    private static readonly DateOnly LogEnd = new(2024, 12, 31);

    [Fact]
    public void Table_OneYoungUnitAmongOld_DoesNotAddAWholeRepair()
    {
        List<UnitRow> units = [Unit("young", LogStart.AddDays(30))];
        units.AddRange(Enumerable.Range(0, 30).Select(i => Unit($"old{i:00}", LogStart.AddDays(-1500 - 10 * i))));
        JobRow[] jobs = [Job("first", LogStart.AddDays(-1), "other"), Job("1", LogStart.AddDays(60), "young"), Job("2", LogStart.AddDays(400), "old05"), Job("last", LogEnd, "other")];
        using Database database = new SmallShop { Units = units, Jobs = [.. jobs] }.Build([.. ResultModels.Curves], LogEnd);
        Assert.All(RepairsPerUnit.Table(database), r => Assert.True(r.MeanRepairs < 0.2 && r.AtRisk >= 10));
    }

    [Fact]
    public void Intervals_SmallFamilies_HoldTheTruth()
    {
        const double Rate = 0.15;
        int held = 0, told = 0;
        var units = new List<UnitRow>();
        var jobs = new List<JobRow> { Job("a", LogStart, "other"), Job("z", LogEnd, "other") };

        // Each world is a type of its own, so that one session makes them all.
        for (int world = 0; world < 60; world++)
        {
            var random = new Random(world);
            for (int u = 0; u < 25; u++)
            {
                DateOnly installed = LogStart.AddDays(random.Next(-2500, 1200));
                string unit = $"w{world:00}u{u:00}";
                units.Add(Unit(unit, installed) with { ApplianceType = $"type{world:00}" });
                double frail = Rate * (random.Next(2) == 0 ? 0.5 : 1.5);
                for (double day = 0; ;)
                {
                    day -= Math.Log(1 - random.NextDouble()) / frail * 365.25;
                    DateOnly on = installed.AddDays((int)day + 1);
                    if (on > LogEnd)
                    {
                        break;
                    }

                    if (on > LogStart)
                    {
                        jobs.Add(Job($"j{jobs.Count:0000}", on, unit));
                    }
                }
            }

        }

        using Database database = new SmallShop { Units = units, Jobs = jobs }.Build([.. ResultModels.Curves], LogEnd);
        foreach (RepairsPerUnit row in RepairsPerUnit.Table(database).Where(r => r.ModelFamily == "all"))
        {
            double from = row.Condition is null ? 0 : double.Parse(row.Condition.Split(' ')[2], System.Globalization.CultureInfo.InvariantCulture);
            double truth = Rate * (row.AgeYears - from);
            told++;
            held += truth + 0.05 * Rate >= row.Lower && truth - 0.05 * Rate <= row.Upper ? 1 : 0;
        }

        output.WriteLine($"{held} of {told} intervals held the truth");
        Assert.True(told > 200);
        Assert.InRange((double)held / told, 0.93, 1);
    }

    private static UnitRow Unit(string id, DateOnly installed) => new(id) { InstalledOn = installed, MadeFrom = installed, MadeTo = installed, Registered = true };

    private static JobRow Job(string id, DateOnly day, string unit) => new(id, day) { ClosedOn = day, UnitId = unit, MainComponent = $"c{id}", ComplaintKind = "other" };
}
