using PartsSignal.SampleShop.Chance;
using PartsSignal.SampleShop.World;

namespace PartsSignal.SampleShop.Simulation;

/// <summary>
/// What one van carries, by its technician's habit: a list made from memory when the log begins, changed a little
/// every quarter towards what was used. Nobody computes anything.
/// </summary>
internal sealed class VanStock
{
    private const int Lines = 128;
    private const int ChangesPerQuarter = 7;

    private readonly SortedDictionary<int, Slot> _slots = [];
    private readonly Dictionary<int, int> _used = [];
    private readonly Dictionary<int, int> _usedBefore = [];

    public IEnumerable<(PartLineage Part, int Version, int OnHand)> OnHand =>
        _slots.Values.SelectMany(s => s.Pieces.GroupBy(p => p.Version).OrderBy(g => g.Key).Select(g => (s.Part, g.Key, g.Count())));

    /// <summary>Lines to order so that every slot is full again.</summary>
    public IEnumerable<(PartLineage Part, int Quantity)> Missing =>
        _slots.Values.Where(s => s.Pieces.Count + s.OnOrder < s.Target).Select(s => (s.Part, s.Target - s.Pieces.Count - s.OnOrder));

    /// <summary>Fills the van from memory.</summary>
    public void FillFromMemory(IReadOnlyDictionary<int, int> neededLately, IReadOnlyList<PartLineage> parts, Dice dice)
    {
        var remembered = parts
            .Where(p => p.SizeClass != "bulky")
            .Select(p => (Part: p, Weight: (neededLately.GetValueOrDefault(p.Index) + 0.15) * dice.LogNormal(p.SizeClass == "large" ? 0.35 : 1, 0.9)))
            .OrderByDescending(p => p.Weight).ThenBy(p => p.Part.Index)
            .Take(Lines);
        foreach ((PartLineage part, double weight) in remembered)
        {
            Slot slot = Add(part, weight > 12 ? 3 : weight > 5 ? 2 : 1);
            for (int i = 0; i < slot.Target; i++)
            {
                slot.Pieces.Add(new Piece(part.VersionOn(ShopCalendar.LogStart), dice.Chance(part.SecondSupplierShare)));
            }
        }
    }

    /// <summary>Takes a piece; null: none on board.</summary>
    public Piece? Take(PartLineage part)
    {
        if (!_slots.TryGetValue(part.Index, out Slot? slot) || slot.Pieces.Count == 0)
        {
            return null;
        }

        Piece piece = slot.Pieces[0];
        slot.Pieces.RemoveAt(0);
        return piece;
    }

    public void NoteNeed(PartLineage part) => _used[part.Index] = _used.GetValueOrDefault(part.Index) + 1;

    public void NoteOrdered(PartLineage part, int quantity)
    {
        if (_slots.TryGetValue(part.Index, out Slot? slot))
        {
            slot.OnOrder += quantity;
        }
    }

    public void Receive(OrderLine line)
    {
        if (!_slots.TryGetValue(line.Part.Index, out Slot? slot))
        {
            return;
        }

        slot.OnOrder = Math.Max(0, slot.OnOrder - line.Quantity);
        for (int i = 0; i < line.Quantity - line.Returned; i++)
        {
            slot.Pieces.Add(new Piece(line.Version, line.Second));
        }
    }

    /// <summary>Once a quarter: what was needed often and is not on board comes on, what nobody touched goes off.</summary>
    public void Adapt(IReadOnlyList<PartLineage> parts)
    {
        int Lately(int part) => _used.GetValueOrDefault(part) + _usedBefore.GetValueOrDefault(part);
        var wanted = parts
            .Where(p => p.SizeClass != "bulky" && !_slots.ContainsKey(p.Index) && Lately(p.Index) >= 3)
            .OrderByDescending(p => Lately(p.Index)).ThenBy(p => p.Index).Take(ChangesPerQuarter).ToList();
        var idle = _slots.Values.Where(s => Lately(s.Part.Index) == 0).OrderBy(s => s.Part.Index).Take(ChangesPerQuarter).ToList();
        for (int i = 0; i < Math.Min(wanted.Count, idle.Count); i++)
        {
            _slots.Remove(idle[i].Part.Index);
            Add(wanted[i], 1);
        }

        foreach (Slot slot in _slots.Values)
        {
            int perQuarter = Lately(slot.Part.Index) / 2;
            slot.Target = perQuarter > 14 ? 3 : perQuarter > 6 ? 2 : 1;
        }

        _usedBefore.Clear();
        foreach ((int part, int count) in _used)
        {
            _usedBefore[part] = count;
        }

        _used.Clear();
    }

    private Slot Add(PartLineage part, int target)
    {
        var slot = new Slot { Part = part, Target = target };
        _slots[part.Index] = slot;
        return slot;
    }

    /// <summary>A piece on board.</summary>
    internal sealed record Piece(int Version, bool Second);

    private sealed class Slot
    {
        public required PartLineage Part { get; init; }

        public required int Target { get; set; }

        public int OnOrder { get; set; }

        public List<Piece> Pieces { get; } = [];
    }
}
