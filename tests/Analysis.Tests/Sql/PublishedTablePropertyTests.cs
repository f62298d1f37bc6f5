using System.Reflection;
using PartsSignal.Analysis.Tests.Fixtures;

namespace PartsSignal.Analysis.Tests.Sql;

/// <summary>What must hold of every published table, whatever the shop.</summary>
public class PublishedTablePropertyTests
{
    private static readonly DateOnly End = new(2023, 12, 31);
    private static readonly string[] CountTables =
        ["month_figures", "month_needs", "failure_rates", "failure_rates by supplier", "failure_rates_by_month", "family_mix", "callback_shares", "repeat_failures", "supplier_quality", "lead_times"];

    [Fact]
    public void EveryTable_RowsPermuted_IsTheSame()
    {
        SmallShop shop = Shop(31);
        var random = new Random(8);
        var shuffled = new SmallShop
        {
            Jobs = [.. shop.Jobs.OrderBy(_ => random.Next())],
            Units = [.. shop.Units.OrderBy(_ => random.Next())],
            Parts = [.. shop.Parts.OrderBy(_ => random.Next())],
            Orders = [.. shop.Orders.OrderBy(_ => random.Next())],
        };
        Same(PublishedTables.Of(shop, End), PublishedTables.Of(shuffled, End), emptyAllowed: ["trend_alarms", "trend_alarm_jobs", "bad_batches", "bad_batch_jobs"]);
    }

    [Fact]
    public void EveryTable_FutureDeleted_SaysWhatCouldBeSaidThen()
    {
        DateOnly then = new(2022, 6, 30);
        SmallShop shop = Shop(32);

        // What is not closed by then would be known later: it is in neither shop.
        HashSet<string> open = [.. shop.Jobs.Where(j => j.OpenedOn <= then && j.ClosedOn > then).Select(j => j.JobId)];
        shop.Jobs.RemoveAll(j => open.Contains(j.JobId));
        shop.Parts.RemoveAll(p => open.Contains(p.JobId));
        HashSet<string> past = [.. shop.Jobs.Where(j => j.OpenedOn <= then).Select(j => j.JobId)];
        var cut = new SmallShop
        {
            Jobs = [.. shop.Jobs.Where(j => past.Contains(j.JobId))],
            Units = shop.Units,
            Parts = [.. shop.Parts.Where(p => past.Contains(p.JobId))],
            Orders = [.. shop.Orders.Where(o => o.OrderedOn <= then).Select(o => o.ReceivedOn <= then ? o : o with { ReceivedOn = null })],
        };
        Same(PublishedTables.Of(cut, then), PublishedTables.Of(shop, then), emptyAllowed: ["trend_alarms", "trend_alarm_jobs", "bad_batches", "bad_batch_jobs"]);
    }

    [Fact]
    public void CountTables_DataDoubled_CountsDouble()
    {
        SmallShop shop = Shop(33);
        var twice = new SmallShop
        {
            Jobs = [.. shop.Jobs, .. shop.Jobs.Select(j => j with { JobId = j.JobId + "x", UnitId = j.UnitId is null ? null : j.UnitId + "x" })],
            Units = [.. shop.Units, .. shop.Units.Select(u => u with { UnitId = u.UnitId + "x" })],
            Parts = [.. shop.Parts, .. shop.Parts.Select(p => p with { JobId = p.JobId + "x" })],
            Orders = [.. shop.Orders, .. shop.Orders.Select(o => o with { OrderId = o.OrderId + "x" })],
        };
        SortedDictionary<string, object[]> once = PublishedTables.Of(shop, End), both = PublishedTables.Of(twice, End);
        foreach (string table in CountTables)
        {
            Assert.Equal((table, once[table].Length), (table, both[table].Length));
            Assert.All(once[table].Zip(both[table]), pair => Assert.All(Counts(pair.First), p =>
                Assert.Equal((table, p.Name, 2 * (long)p.GetValue(pair.First)!), (table, p.Name, (long)p.GetValue(pair.Second)!))));
        }
    }

    private static IEnumerable<PropertyInfo> Counts(object row) =>
        row.GetType().GetProperties().Where(p => p.PropertyType == typeof(long) || (p.PropertyType == typeof(long?) && p.GetValue(row) is not null));

    private static void Same(SortedDictionary<string, object[]> one, SortedDictionary<string, object[]> other, string[] emptyAllowed)
    {
        foreach ((string table, object[] rows) in one)
        {
            Assert.True(rows.Length > 0 || emptyAllowed.Contains(table), table);
            Assert.Equal(rows.Select(r => $"{table}: {r}"), other[table].Select(r => $"{table}: {r}"));
        }
    }

    // A register with families that differ, dryers without one, repairs of four technicians with parts of two suppliers.
    private static SmallShop Shop(int seed)
    {
        SmallShop world = new ShopWorld(seed).Shop;
        string?[] suppliers = ["Aster", "Birk", null];
        JobRow[] jobs = [.. world.Jobs.Select((j, i) => j with
        {
            ClosedOn = j.OpenedOn.AddDays(i % 50 == 0 ? 33 : i % 4),
            Technician = $"T{i % 4}",
            CustomerId = $"C{i % 300}",
            ModelNumber = $"{j.ModelFamily}-{i % 3}",
            FirstVisitDone = i % 3 != 0,
            MadeFrom = j.OpenedOn.AddDays(-900 - (i % 700)),
            MadeTo = j.OpenedOn.AddDays(-900 - (i % 700)),
        })];
        return new SmallShop
        {
            Jobs = [.. jobs],
            Units = [.. world.Units, .. jobs.Where(j => j is { UnitId: null, ApplianceType: "dryer" }).Take(300).Select(j => new UnitRow("seen-" + j.JobId))],
            Parts = [.. jobs.Where(j => j.MainComponent is not null and not "none")
                .Select((j, i) => new JobPartRow(j.JobId, 1, $"P{i % 7}", j.MainComponent) { Supplier = suppliers[i % 3] })],
            Orders = [.. jobs.Where(j => j.MainComponent is not null and not "none").Take(400)
                .Select((j, i) => new PartOrderRow($"O{i:0000}", 1, suppliers[i % 2]!, j.OpenedOn, i % 11 == 0 ? null : j.OpenedOn.AddDays(1 + (i % 9))) { Component = j.MainComponent })],
        };
    }
}
