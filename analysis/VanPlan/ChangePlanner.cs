namespace PartsSignal.Analysis.VanPlan;

/// <summary>
/// Gets every van from what was counted aboard to its plan: pieces move between vans before any is bought, and what no
/// van wants goes back to its supplier while the return window is open, else to the shelf.
/// </summary>
internal static class ChangePlanner
{
    /// <summary>All steps, by van, action and part.</summary>
    /// <param name="data">The shop; vans without a count start empty.</param>
    /// <param name="plans">The plans, all of one view.</param>
    public static IReadOnlyList<VanChange> Changes(ShopData data, IReadOnlyList<PlannedVan> plans)
    {
        if (plans.Count == 0)
        {
            return [];
        }

        var changes = new List<VanChange>();
        IReadOnlyList<StockPart> parts = plans[0].View.Parts;
        var windows = new ReturnWindows(data, parts);
        ILookup<string, ShopCount> counted = data.Counts.ToLookup(c => c.PartNumber, StringComparer.Ordinal);
        for (int p = 0; p < parts.Count; p++)
        {
            int at = p;
            StockPart part = parts[p];
            VanPart[] vans = [.. plans.Select(v => new VanPart(v.Van.Van, v.Target[at],
                [.. counted[part.Number].Where(c => c.Van == v.Van.Van).OrderBy(c => c.FittedNumber == part.Number ? 0 : 1)]))];
            Stay(changes, part, vans);
            Move(changes, part, vans);
            foreach (VanPart van in vans)
            {
                Leave(changes, part, van, windows);
                Emit(changes, part, van.Van, ChangeAction.Add, part.Ended ? 0 : van.Missing);
            }
        }

        return [.. changes.OrderBy(c => c.Van, StringComparer.Ordinal).ThenBy(c => c.Action).ThenBy(c => c.PartNumber, StringComparer.Ordinal)
            .ThenBy(c => c.Label, StringComparer.Ordinal).ThenBy(c => c.OtherVan, StringComparer.Ordinal)];
    }

    private static void Stay(List<VanChange> changes, StockPart part, VanPart[] vans)
    {
        foreach (VanPart van in vans)
        {
            foreach (ShopCount count in van.Counts)
            {
                bool old = count.FittedNumber != part.Number;
                int kept = Math.Min(count.OnHand, van.Missing);
                van.Missing -= kept;
                van.Spare.Enqueue((old ? count.FittedNumber : null, count.OnHand - kept));
                Emit(changes, part, van.Van, old ? ChangeAction.Replace : ChangeAction.Keep, kept, old ? count.FittedNumber : null);
            }
        }
    }

    private static void Move(List<VanChange> changes, StockPart part, VanPart[] vans)
    {
        foreach (VanPart to in vans)
        {
            foreach (VanPart from in vans.Where(v => v != to))
            {
                while (to.Missing > 0 && from.Spare.TryPeek(out (string? Label, int Pieces) spare))
                {
                    int moved = Math.Min(to.Missing, spare.Pieces);
                    from.Use(moved);
                    to.Missing -= moved;
                    Emit(changes, part, from.Van, ChangeAction.MoveOut, moved, spare.Label, to.Van);
                    Emit(changes, part, to.Van, ChangeAction.MoveIn, moved, spare.Label, from.Van);
                }
            }
        }
    }

    private static void Leave(List<VanChange> changes, StockPart part, VanPart van, ReturnWindows windows)
    {
        while (van.Spare.TryPeek(out (string? Label, int Pieces) spare))
        {
            // A piece under an old number was bought before the arrow: too long ago to send back.
            if (spare.Pieces > 0 && spare.Label is null && windows.Take(part.Number, spare.Pieces) is { } open)
            {
                van.Use(open.Pieces);
                Emit(changes, part, van.Van, ChangeAction.SendBack, open.Pieces, by: open.By);
            }
            else
            {
                van.Use(spare.Pieces);
                Emit(changes, part, van.Van, ChangeAction.TakeOff, spare.Pieces, spare.Label);
            }
        }
    }

    private static void Emit(
        List<VanChange> changes, StockPart part, string van, ChangeAction action, int pieces, string? label = null, string? other = null, DateOnly? by = null)
    {
        if (pieces > 0)
        {
            changes.Add(new VanChange(van, action, part.Number, label, part.Description, pieces, other, by, pieces * part.Price, part.Supplier));
        }
    }

    /// <summary>One part on one van while it is being sorted out.</summary>
    private sealed class VanPart(string van, int target, ShopCount[] counts)
    {
        public string Van { get; } = van;

        public ShopCount[] Counts { get; } = counts;

        public int Missing { get; set; } = target;

        public Queue<(string? Label, int Pieces)> Spare { get; } = new();

        /// <summary>Takes pieces of the first label off the spare ones.</summary>
        public void Use(int pieces)
        {
            (string? label, int left) = Spare.Dequeue();
            if (left > pieces)
            {
                (string?, int)[] rest = [.. Spare];
                Spare.Clear();
                Spare.Enqueue((label, left - pieces));
                foreach ((string?, int) more in rest)
                {
                    Spare.Enqueue(more);
                }
            }
        }
    }
}

/// <summary>One step from what is aboard to the plan.</summary>
/// <param name="Van">The van.</param>
/// <param name="Action">What to do.</param>
/// <param name="PartNumber">Current number.</param>
/// <param name="Label">Number on the piece, where it is another, or null if it is the current number, or there is no piece yet.</param>
/// <param name="Description">Text, or null if there is none.</param>
/// <param name="Quantity">Pieces, 1 or more.</param>
/// <param name="OtherVan">The other van of a move, or null if it is no move.</param>
/// <param name="By">Last day the supplier takes it back, or null if there is no such day.</param>
/// <param name="Money">Price of the pieces.</param>
/// <param name="Supplier">Who delivers or takes it back, or null if not known.</param>
public sealed record VanChange(
    string Van, ChangeAction Action, string PartNumber, string? Label, string? Description, int Quantity, string? OtherVan,
    DateOnly? By, decimal Money, string? Supplier);

/// <summary>What to do with pieces on the way from what is aboard to the plan.</summary>
public enum ChangeAction
{
    /// <summary>Aboard and wanted.</summary>
    Keep,

    /// <summary>Aboard under an old number: use it up first; what replaces it on the van is the current number.</summary>
    Replace,

    /// <summary>Wanted, to be ordered.</summary>
    Add,

    /// <summary>Goes to another van that needs it.</summary>
    MoveOut,

    /// <summary>Comes from another van that does not need it.</summary>
    MoveIn,

    /// <summary>Not wanted; goes back to the supplier while it still takes it.</summary>
    SendBack,

    /// <summary>Not wanted; goes to the shop's shelf.</summary>
    TakeOff,
}
