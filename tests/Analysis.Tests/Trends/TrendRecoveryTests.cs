using PartsSignal.Analysis.Trends;

namespace PartsSignal.Analysis.Tests.Trends;

/// <summary>Two hundred worlds whose truth is known.</summary>
public sealed class TrendRecoveryTests(ITestOutputHelper output)
{
    private const int Worlds = 200;
    private static readonly TrendOptions Options = new();

    [SlowFact]
    public void NothingChanges_FalseAlarms_StayWithinTheStatedRate()
    {
        double months = 0, monthsWithAlarm = 0, drifts = 0, allowedDrifts = 0, alarms = 0, told = 0;
        for (int world = 0; world < Worlds; world++)
        {
            TrendTables found = TrendTables.Create(new TrendWorld(1000 + world).Book(), Options);
            months += found.Scans.Count;
            monthsWithAlarm += found.Scans.Count(s => s.MonthAlarms > 0);
            drifts += found.Scans.Sum(s => s.DriftAlarms);
            allowedDrifts += found.Scans.Sum(s => s.FalseDrifts);
            alarms += found.Scans.Sum(s => s.MonthAlarms + s.DriftAlarms);
            told += found.Scans.Sum(s => s.FalsePerYear);
        }

        output.WriteLine($"{months} months: {monthsWithAlarm / months:0.0000} with a false alarm (stated 0.10), {drifts / months:0.0000} false drifts a month (stated {allowedDrifts / months:0.0000}), {12 * alarms / months:0.00} false alarms a year (told {told / months:0.00})");
        Assert.InRange(monthsWithAlarm / months, 0, Options.Gate.Q);
        Assert.InRange(drifts / months, 0, allowedDrifts / months);
        Assert.InRange(12 * alarms / months, 0, told / months);
    }

    [SlowFact]
    public void BadBatch_IsNamed_WithinTheMonthInWhichItsPowerPassesEightyPercent()
    {
        double[] rise = [1, 2, 4, 6, 8, 10, 12];
        int named = 0, built = 0, since = 0;
        for (int world = 0; world < Worlds; world++)
        {
            var shop = new TrendWorld(5000 + world) { Rise = new Rise("F4", "inlet_valve", 40, rise, TrendWorld.First + 14) };
            TrendTables found = TrendTables.Create(shop.Book(), Options);
            int powerful = FirstPowerfulMonth(shop, found, rise);
            TrendAlarm? alarm = found.Alarms.FirstOrDefault(a => a is { Component: "inlet_valve", ModelFamily: "F4" } && a.Month >= TrendMonth.Day(TrendWorld.First + 40));
            named += alarm is not null && alarm.Month <= TrendMonth.Day(powerful) ? 1 : 0;
            TrendAlarm? last = found.Alarms.LastOrDefault(a => a is { Component: "inlet_valve", ModelFamily: "F4" });
            built += last?.BuiltFrom == TrendMonth.Day(TrendWorld.First + 14) ? 1 : 0;
            since += last is not null && Math.Abs(last.Since.DayNumber - TrendMonth.Day(TrendWorld.First + 41).DayNumber) < 95 ? 1 : 0;
        }

        output.WriteLine($"named in time {named}, build month right {built}, since within three months {since}, of {Worlds}");
        Assert.InRange((double)named / Worlds, 0.8, 1);
        Assert.InRange((double)built / Worlds, 0.9, 1);
        Assert.InRange((double)since / Worlds, 0.8, 1);
    }

    // The smallest count that passed, or would have, among everything scanned in that month, against the true mean.
    private static int FirstPowerfulMonth(TrendWorld shop, TrendTables found, double[] rise)
    {
        double usual = shop.CallsPerMonth * (0.25 / Enumerable.Range(1, shop.Families).Sum(i => 1.0 / i)) * 0.10;
        for (int m = 40; m < shop.Months; m++)
        {
            int scanned = found.Scans.Single(s => s.Month == TrendMonth.Day(TrendWorld.First + m)).SeriesTested;
            var limit = KnownMean.Limit(0.75 * usual, Options.Gate.Q / scanned);
            if (KnownMean.Power(limit, 0.75 * (usual + rise[Math.Min(m - 40, rise.Length - 1)])) >= 0.8)
            {
                return TrendWorld.First + m;
            }
        }

        return TrendWorld.First + shop.Months;
    }
}
