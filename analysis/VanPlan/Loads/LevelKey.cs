namespace PartsSignal.Analysis.VanPlan.Loads;

/// <summary>A set of levels as a dictionary key, with an order that does not depend on hashing.</summary>
internal readonly struct LevelKey(PartNeed[] needs) : IEquatable<LevelKey>, IComparable<LevelKey>
{
    /// <summary>The levels, by part.</summary>
    public PartNeed[] Needs { get; } = needs;

    public bool Equals(LevelKey other) => Needs.AsSpan().SequenceEqual(other.Needs);

    public override bool Equals(object? obj) => obj is LevelKey other && Equals(other);

    public override int GetHashCode()
    {
        int hash = Needs.Length;
        foreach (PartNeed need in Needs)
        {
            hash = unchecked((((hash * 31) + need.Part) * 31) + need.Quantity);
        }

        return hash;
    }

    public int CompareTo(LevelKey other)
    {
        for (int i = 0; i < Math.Min(Needs.Length, other.Needs.Length); i++)
        {
            int order = Needs[i].Part.CompareTo(other.Needs[i].Part);
            order = order != 0 ? order : Needs[i].Quantity.CompareTo(other.Needs[i].Quantity);
            if (order != 0)
            {
                return order;
            }
        }

        return Needs.Length.CompareTo(other.Needs.Length);
    }
}
