using PartsSignal.Analysis.VanPlan;
using PartsSignal.Analysis.Vocabulary;

namespace PartsSignal.Analysis.Tests.VanPlan;

/// <summary>A made-up shop: two vans, twelve parts, two and a half years of jobs; part P03 is replaced by Q03 on the way.</summary>
internal static class TinyShop
{
    public static readonly DateOnly AsOf = new(2026, 6, 30);
    private static readonly DateOnly Start = new(2024, 1, 1);
    private static readonly DateOnly Replaced = new(2025, 10, 1);

    public static VanPlanOptions Options { get; } = new()
    {
        Vans = [new VanLimits("1", 250, 40), new VanLimits("2", 250, 40)],
        ReplayQuarters = 3,
        Draws = 100,
    };

    public static ShopData Make(int seed, int jobs = 900)
    {
        var random = new Random(seed);
        int days = AsOf.DayNumber - Start.DayNumber;
        ShopJob[] all = [.. Enumerable.Range(0, jobs).Select(i => Job(random, $"J{i:0000}", Start.AddDays(days * i / jobs)))];
        return new ShopData
        {
            AsOf = AsOf,
            Jobs = all,
            LastUses = [.. all.SelectMany(j => j.Lines.Select(l => (Part: l.PartNumber!, j.OpenedOn))).GroupBy(u => u.Part).Select(g => new ShopLastUse(g.Key, g.Max(u => u.OpenedOn)))],
            Parts = [.. Numbers().Select((n, i) => new ShopPart(
                n, n == "P03" ? "Q03" : n, $"part {n}", i % 3 == 0 ? "pump" : "valve", n == "Q03" ? 29 : 8 + (7 * i), i == 11 ? "bulky" : "small", i == 11 ? 25 : 1, 60, "First"))],
            Orders = [.. Enumerable.Range(0, 60).Select(i => new ShopOrder(
                "First", Start.AddDays(15 * i), Start.AddDays((15 * i) + 3), $"P{i % 3:00}", 1, 8 + (7 * (i % 3)) + (i / 20), i % 2 == 0 ? null : "J0001"))],
            Counts = [new ShopCount("1", "P11", "P11", 1, AsOf), new ShopCount("1", "Q03", "P03", 2, AsOf), new ShopCount("2", "P00", "P00", 14, AsOf)],
            NumbersOn = day => day >= Replaced ? new Dictionary<string, string> { ["P03"] = "Q03" } : new Dictionary<string, string>(),
        };
    }

    /// <summary>The same shop as it stood on the evening before a day: later rows are gone, jobs closed later are open.</summary>
    public static ShopData CutBefore(ShopData data, DateOnly day) => data with
    {
        AsOf = day.AddDays(-1),
        Jobs = [.. data.Jobs.Where(j => j.OpenedOn < day).Select(j => j.ClosedOn >= day ? j with { ClosedOn = null, Outcome = Outcome.Unknown, Lines = [] } : j)],
        Orders = [.. data.Orders.Where(o => o.OrderedOn < day).Select(o => o.ReceivedOn >= day ? o with { ReceivedOn = null } : o)],
        Counts = [],
    };

    private static IEnumerable<string> Numbers() => [.. Enumerable.Range(0, 12).Select(i => $"P{i:00}"), "Q03"];

    private static ShopJob Job(Random random, string id, DateOnly opened)
    {
        int main = (int)(12 * random.NextDouble() * random.NextDouble());
        string number = main == 3 && opened >= Replaced ? "Q03" : $"P{main:00}";
        ShopPartLine[] lines = random.Next(4) == 0 ? [] : [new(main == 3 ? "Q03" : number, number, 1)];
        lines = lines.Length > 0 && random.Next(5) == 0 ? [.. lines, new("P07", "P07", 1)] : lines;
        string outcome = lines.Length == 0 ? Outcome.FixedWithoutPart : Outcome.FixedWithPart;
        bool declined = random.Next(12) == 0;
        return new ShopJob(
            id, random.Next(2) == 0 ? "1" : "2", opened, opened.AddDays(random.Next(0, 9)), main % 2 == 0 ? "washer" : "dryer", $"F{main % 5}",
            declined ? Outcome.Declined : outcome, declined ? [] : lines);
    }
}
