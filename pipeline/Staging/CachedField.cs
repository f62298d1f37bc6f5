using System.IO.Hashing;
using System.Runtime.InteropServices;

namespace PartsSignal.Pipeline.Staging;

/// <summary>
/// A field whose value depends on nothing but its own cell, so that equal cells are read once. A cell that cannot be read
/// is never cached: each such row is refused or tallied.
/// </summary>
/// <param name="field">The field.</param>
/// <param name="read">Reads it from the current row.</param>
/// <param name="bits">How much is remembered: two to this power texts at most.</param>
internal sealed class CachedField<T>(MappedField field, Func<MappedRow, MappedField, T> read, int bits = 12)
{
    private readonly ParseCache<T> _memory = new(bits);
    private bool _knowsEmpty;
    private T _empty = default!;

    /// <summary>True when the file or the map gives this field.</summary>
    public bool IsMapped { get; } = field.IsMapped;

    /// <summary>What the current row says.</summary>
    public T Read(MappedRow row)
    {
        bool plain = row.TryPlain(field, out ReadOnlySpan<char> cell);
        if (row.Fault is not null || !plain)
        {
            return read(row, field);
        }

        if (cell.IsEmpty && _knowsEmpty)
        {
            return _empty;
        }

        return _memory.TryGet(cell, out T known) ? known : ReadAnew(row, cell);
    }

    private T ReadAnew(MappedRow row, ReadOnlySpan<char> cell)
    {
        (long skipped, long checks) = (row.Unread.Cells, row.CustomerChecks);
        T value = read(row, field);
        if (row.Fault is not null || row.Unread.Cells != skipped || row.CustomerChecks != checks)
        {
            return value;
        }

        if (cell.IsEmpty)
        {
            (_knowsEmpty, _empty) = (true, value);
        }
        else
        {
            _memory.Keep(cell, value);
        }

        return value;
    }
}

/// <summary>
/// Remembers what was read from the texts of one column, for columns that repeat themselves. Entries are identified by length
/// and a 64-bit hash (XXH3, Collet 2019); the slot index holds the top bits, and a newer text replaces an older one in its
/// slot. In a column of a hundred million rows the chance that any text is taken for another is below one in a million. A
/// column that hardly repeats itself is soon no longer cached.
/// </summary>
/// <param name="bits">Bits of a place's number, 1 to 30.</param>
internal sealed class ParseCache<T>(int bits)
{
    private const int Trial = 1 << 13;
    private const int MaxLength = 128;
    private Entry[]? _entries;
    private long _asked;
    private long _kept;
    private bool _useless;

    /// <summary>What was read from this text before.</summary>
    public bool TryGet(ReadOnlySpan<char> text, out T value)
    {
        if (_entries is { } entries && text.Length <= MaxLength)
        {
            _asked++;
            ulong mark = Mark(text);
            ref readonly Entry entry = ref entries[Place(mark)];
            if (entry.Mark == mark && entry.Length == text.Length)
            {
                value = entry.Value;
                return true;
            }
        }

        value = default!;
        return false;
    }

    /// <summary>Remembers what was read from a text; not the empty one.</summary>
    public void Keep(ReadOnlySpan<char> text, T value)
    {
        if (_useless || text.Length > MaxLength)
        {
            return;
        }

        _entries ??= new Entry[1 << bits];
        ulong mark = Mark(text);
        _entries[Place(mark)] = new Entry(mark, text.Length, value);
        _useless = ++_kept >= Trial && _kept * 4 > _asked * 3;
        _entries = _useless ? null : _entries;
    }

    private static ulong Mark(ReadOnlySpan<char> text) => XxHash3.HashToUInt64(MemoryMarshal.AsBytes(text));

    private int Place(ulong mark) => (int)(mark >> (64 - bits));

    private readonly record struct Entry(ulong Mark, int Length, T Value);
}
