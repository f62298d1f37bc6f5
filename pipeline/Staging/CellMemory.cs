using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace PartsSignal.Pipeline.Staging;

/// <summary>
/// What was read from the texts of one column, for a column that repeats itself: a text is read once, not once a row.
/// A place holds one text and the last one wins; a column that does not repeat itself is soon not remembered at all.
/// </summary>
/// <param name="bits">Bits of a place's number, 1 to 30.</param>
internal sealed class CellMemory<T>(int bits)
{
    private const int Trial = 1 << 13;
    private const int MaxLength = 128;
    private const ulong Mix = 0x9E3779B97F4A7C15;
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
            ref readonly Entry entry = ref entries[Place(text)];
            if (entry.Text is { } same && text.SequenceEqual(same))
            {
                value = entry.Value;
                return true;
            }
        }

        value = default!;
        return false;
    }

    /// <summary>Remembers what was read from a text.</summary>
    public void Keep(ReadOnlySpan<char> text, T value)
    {
        if (_useless || text.Length > MaxLength)
        {
            return;
        }

        _entries ??= new Entry[1 << bits];
        _entries[Place(text)] = new Entry(text.ToString(), value);
        _useless = ++_kept >= Trial && _kept * 4 > _asked * 3;
        _entries = _useless ? null : _entries;
    }

    // Multiply and fold, eight bytes at a time; the last ones overlap those before.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private int Place(ReadOnlySpan<char> text)
    {
        ref byte start = ref Unsafe.As<char, byte>(ref MemoryMarshal.GetReference(text));
        int bytes = text.Length * sizeof(char);
        ulong hash = (ulong)bytes * Mix;
        if (bytes >= sizeof(ulong))
        {
            int last = bytes - sizeof(ulong);
            for (int at = 0; at < last; at += sizeof(ulong))
            {
                hash = Fold(hash ^ Unsafe.ReadUnaligned<ulong>(ref Unsafe.Add(ref start, at)));
            }

            hash = Fold(hash ^ Unsafe.ReadUnaligned<ulong>(ref Unsafe.Add(ref start, last)));
        }
        else
        {
            foreach (char c in text)
            {
                hash = Fold(hash ^ c);
            }
        }

        return (int)(hash >> (64 - bits));
    }

    private static ulong Fold(ulong hash)
    {
        hash *= Mix;
        return hash ^ (hash >> 32);
    }

    private readonly record struct Entry(string? Text, T Value);
}
