using System.IO.Hashing;
using System.Runtime.InteropServices;

namespace PartsSignal.Pipeline.Understanding;

/// <summary>Different values of a whole column, as numbers, so that columns of different tables can be compared.</summary>
internal sealed class ValueSet
{
    private const int Most = 50_000;
    private readonly HashSet<ulong> _values = [];

    /// <summary>Cells with content.</summary>
    public long Filled { get; private set; }

    /// <summary>Different values, as far as they were kept.</summary>
    public int Count => _values.Count;

    /// <summary>Characters of all cells, for their mean length.</summary>
    public long Characters { get; private set; }

    /// <summary>True when hardly a value stands twice: the column could name its rows.</summary>
    public bool IsKey => Filled >= 3 && (Count >= Most ? Filled < Most * 1.05 : Count >= Filled * 0.98);

    /// <summary>Adds a cell; case and blanks around do not matter.</summary>
    public void Add(ReadOnlySpan<char> cell)
    {
        cell = cell.Trim();
        Filled++;
        Characters += cell.Length;
        if (_values.Count >= Most)
        {
            return;
        }

        Span<char> plain = stackalloc char[64];
        ReadOnlySpan<char> cut = cell[..Math.Min(cell.Length, plain.Length)];
        int n = cut.ToUpperInvariant(plain);
        _values.Add(XxHash3.HashToUInt64(MemoryMarshal.AsBytes(plain[..n])));
    }

    /// <summary>Share of this column's values that the other holds too, 0 to 1.</summary>
    public double ShareIn(ValueSet other)
    {
        if (Count == 0 || other.Count == 0)
        {
            return 0;
        }

        int both = 0;
        foreach (ulong value in _values)
        {
            both += other._values.Contains(value) ? 1 : 0;
        }

        return (double)both / Count;
    }
}
