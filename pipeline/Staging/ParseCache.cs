using System.IO.Hashing;
using System.Runtime.InteropServices;

namespace PartsSignal.Pipeline.Staging;

/// <summary>
/// What was read from the texts of one column, for a column that repeats itself: a text is read once, not once a row.
/// A text is known by its length and 64 bits of hash (XXH3, Collet 2019), of which its place says the first: in a column of
/// a hundred million rows the chance that any text is taken for another is below one in a million. A place holds one text
/// and the last one wins; a column that does not repeat itself is soon not remembered at all.
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
