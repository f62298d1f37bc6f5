using PartsSignal.Analysis.Prediction;

namespace PartsSignal.Analysis.VanPlan;

/// <summary>
/// Pieces that came in for a job that waits for them. They are that job's: what was counted on its van without them is what
/// other calls can be given.
/// </summary>
internal static class Reservations
{
    /// <summary>The shop with the counts less the pieces received, up to the day of the count, for jobs that still wait.</summary>
    /// <param name="data">The shop.</param>
    /// <param name="waiting">Jobs that wait for an ordered part.</param>
    public static ShopData SetAside(ShopData data, IReadOnlyList<BookedCall> waiting)
    {
        Dictionary<string, string?> vans = waiting.ToDictionary(c => c.JobId, c => c.Van, StringComparer.Ordinal);
        ILookup<(string Van, string Part), ShopOrder> received = data.Orders
            .Where(o => o.JobId is not null && o.Kept > 0 && o.ReceivedOn <= data.AsOf && vans.GetValueOrDefault(o.JobId) is not null)
            .ToLookup(o => (vans[o.JobId!]!, o.PartNumber));
        if (received.Count == 0)
        {
            return data;
        }

        var left = new Dictionary<(string, string), int>();
        var counts = new List<ShopCount>(data.Counts.Count);
        foreach (ShopCount count in data.Counts)
        {
            (string, string) key = (count.Van, count.PartNumber);
            int reserved = left.TryGetValue(key, out int some) ? some : received[key].Where(o => o.ReceivedOn <= (count.CountedOn ?? data.AsOf)).Sum(o => o.Kept);
            int taken = Math.Min(reserved, count.OnHand);
            left[key] = reserved - taken;
            if (count.OnHand > taken)
            {
                counts.Add(count with { OnHand = count.OnHand - taken });
            }
        }

        return data with { Counts = counts };
    }
}
