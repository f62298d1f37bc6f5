using PartsSignal.Analysis.Prediction;

namespace PartsSignal.Analysis.VanPlan;

/// <summary>
/// Pieces that came in for a job that waits for them. They are that job's, on its van or on the shelf: what was counted
/// without them is what other calls can be given.
/// </summary>
internal static class Reservations
{
    /// <summary>The shop with the counts less the pieces received, up to the day of the count, for jobs that still wait.</summary>
    /// <param name="data">The shop.</param>
    /// <param name="waiting">Jobs that wait for an ordered part.</param>
    public static ShopData SetAside(ShopData data, IReadOnlyList<BookedCall> waiting)
    {
        Dictionary<string, string> vans = waiting.ToDictionary(c => c.JobId, c => c.Van ?? "", StringComparer.Ordinal);
        Piece[] pieces = [.. data.Orders
            .Where(o => o.JobId is not null && o.Kept > 0 && o.ReceivedOn <= data.AsOf && vans.ContainsKey(o.JobId))
            .Select(o => new Piece(vans[o.JobId!], o.PartNumber, o.ReceivedOn!.Value, o.Kept))];
        if (pieces.Length == 0)
        {
            return data;
        }

        return data with
        {
            Counts = [.. data.Counts
                .Select(c => c with { OnHand = c.OnHand - Taken(pieces, c.PartNumber, c.Van, c.CountedOn ?? data.AsOf, c.OnHand) })
                .Where(c => c.OnHand > 0)],
            Shelf = [.. data.Shelf.Select(s => s with { OnHand = s.OnHand - Taken(pieces, s.PartNumber, null, s.CountedOn ?? data.AsOf, s.OnHand) })],
        };
    }

    // Takes pieces of the part that had come in by the day of the count: those for the van, or on the shelf for anyone.
    private static int Taken(Piece[] pieces, string part, string? van, DateOnly countedOn, int onHand)
    {
        int taken = 0;
        foreach (Piece piece in pieces.Where(p => p.Part == part && (van is null || p.Van == van) && p.ReceivedOn <= countedOn))
        {
            int now = Math.Min(piece.Left, onHand - taken);
            piece.Left -= now;
            taken += now;
        }

        return taken;
    }

    private sealed class Piece(string van, string part, DateOnly receivedOn, int left)
    {
        public string Van => van;

        public string Part => part;

        public DateOnly ReceivedOn => receivedOn;

        public int Left { get; set; } = left;
    }
}
