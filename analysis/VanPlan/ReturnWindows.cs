namespace PartsSignal.Analysis.VanPlan;

/// <summary>Pieces bought for stock that their supplier still takes back, soonest deadline first. A piece is given out once.</summary>
internal sealed class ReturnWindows
{
    private readonly Dictionary<string, Queue<(DateOnly By, int Left)>> _open = new(StringComparer.Ordinal);

    /// <summary>Collects the windows still open on the last day of the data.</summary>
    public ReturnWindows(ShopData data, IEnumerable<StockPart> parts)
    {
        var days = parts.Where(p => p.ReturnableDays > 0).ToDictionary(p => p.Number, p => p.ReturnableDays!.Value, StringComparer.Ordinal);
        foreach (var part in data.Orders
            .Where(o => o.JobId is null && o.Kept > 0 && o.ReceivedOn is not null && days.ContainsKey(o.PartNumber))
            .Select(o => (o.PartNumber, By: o.ReceivedOn!.Value.AddDays(days[o.PartNumber]), o.Kept))
            .Where(o => o.By > data.AsOf)
            .OrderBy(o => o.By)
            .GroupBy(o => o.PartNumber, StringComparer.Ordinal))
        {
            _open[part.Key] = new Queue<(DateOnly, int)>(part.Select(o => (o.By, o.Kept)));
        }
    }

    /// <summary>Takes up to so many pieces of the window that closes first, or null if none is open.</summary>
    public (DateOnly By, int Pieces)? Take(string part, int pieces)
    {
        if (!_open.TryGetValue(part, out var windows) || !windows.TryPeek(out (DateOnly By, int Left) first))
        {
            return null;
        }

        int taken = Math.Min(pieces, first.Left);
        windows.Dequeue();
        if (first.Left > taken)
        {
            _open[part] = new Queue<(DateOnly By, int Left)>(windows.Prepend((first.By, first.Left - taken)));
        }

        return (first.By, taken);
    }
}
