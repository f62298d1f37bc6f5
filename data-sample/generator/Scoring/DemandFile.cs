using System.Globalization;
using PartsSignal.SampleShop.Simulation;
using PartsSignal.SampleShop.World;
using PartsSignal.SampleShop.Writing;

namespace PartsSignal.SampleShop.Scoring;

/// <summary>
/// True demand of the first area's vans: the same machines lived through again with other luck, many times over, and the
/// part sets counted. What one shop saw is one draw from this.
/// </summary>
internal static class DemandFile
{
    /// <summary>How often the years are lived again.</summary>
    public const int Replicates = 12;

    public static void Write(string folder, long seed, double size)
    {
        var total = new SortedDictionary<string, int>(StringComparer.Ordinal);
        for (int r = 1; r <= Replicates; r++)
        {
            var counter = new Counter();
            new Area(seed, seed + (7919L * r), 0, size, new Numbering(), counter).Run();
            foreach ((string key, int count) in counter.Sets)
            {
                total[key] = total.GetValueOrDefault(key) + count;
            }
        }

        using var file = new PackedFile(Path.Combine(folder, "demand.csv.gz"));
        file.Row("van", "quarter", "parts", "jobs_per_quarter");
        foreach ((string key, int count) in total)
        {
            file.Row($"{key},{((double)count / Replicates).ToString("0.####", CultureInfo.InvariantCulture)}");
        }
    }

    private sealed class Counter : IShopLog
    {
        public Dictionary<string, int> Sets { get; } = [];

        public void Final(Job job)
        {
            if (job.State != JobState.FixedWithPart || job.ClosedDay > ShopCalendar.AsOf)
            {
                return;
            }

            DateOnly opened = ShopCalendar.Date(job.OpenedDay);
            string set = string.Join('+', job.Parts
                .GroupBy(p => p.Part.Current.Number)
                .OrderBy(g => g.Key, StringComparer.Ordinal)
                .Select(g => g.Sum(p => p.Quantity) is var n && n > 1 ? $"{g.Key} x{JobRow.Text(n)}" : g.Key));
            string key = $"{JobRow.Text(job.Van + 1)},{JobRow.Text(opened.Year)}Q{JobRow.Text(((opened.Month - 1) / 3) + 1)},{set}";
            Sets[key] = Sets.GetValueOrDefault(key) + 1;
        }

        public void Opened(Job job)
        {
        }

        public void DayDone(int day)
        {
        }

        public void Ordered(OrderLine line)
        {
        }

        public void Closing(Area area)
        {
        }
    }
}
