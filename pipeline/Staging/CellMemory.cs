using System.Numerics;
using System.Runtime.InteropServices;

namespace PartsSignal.Pipeline.Staging;

/// <summary>
/// What was read from the texts of one column, for a column that repeats itself: a text is read once, not once a row.
/// A place holds one text and the last one wins; a column that does not repeat itself is soon not remembered at all.
/// </summary>
internal sealed class CellMemory<T>
{
    private const int Places = 1 << 12;
    private const int Trial = 1 << 13;
    private const int MaxLength = 128;
    private const ulong Mix = 0x9E3779B97F4A7C15;
    private readonly Entry[] _entries = new Entry[Places];
    private int _asked;
    private int _known;
    private bool _useless;

    /// <summary>What was read from this text before.</summary>
    public bool TryGet(ReadOnlySpan<char> text, out T value)
    {
        if (_useless || text.Length > MaxLength)
        {
            value = default!;
            return false;
        }

        ref readonly Entry entry = ref _entries[Place(text)];
        bool known = entry.Text is { } same && text.SequenceEqual(same);
        value = known ? entry.Value : default!;
        Judge(known);
        return known;
    }

    /// <summary>Remembers what was read from a text.</summary>
    public void Keep(ReadOnlySpan<char> text, T value)
    {
        if (!_useless && text.Length <= MaxLength)
        {
            _entries[Place(text)] = new Entry(text.ToString(), value);
        }
    }

    // Multiply and fold, eight bytes at a time; the last ones overlap those before.
    private static int Place(ReadOnlySpan<char> text)
    {
        ReadOnlySpan<byte> bytes = MemoryMarshal.AsBytes(text);
        ulong hash = (ulong)bytes.Length * Mix;
        if (bytes.Length >= sizeof(ulong))
        {
            for (int at = 0; at + sizeof(ulong) < bytes.Length; at += sizeof(ulong))
            {
                hash = (hash ^ MemoryMarshal.Read<ulong>(bytes[at..])) * Mix;
                hash ^= hash >> 32;
            }

            hash = (hash ^ MemoryMarshal.Read<ulong>(bytes[^sizeof(ulong)..])) * Mix;
        }
        else
        {
            foreach (char c in text)
            {
                hash = (hash ^ c) * Mix;
            }
        }

        return (int)(hash >> (64 - BitOperations.Log2(Places)));
    }

    private void Judge(bool known)
    {
        _known += known ? 1 : 0;
        if (++_asked == Trial)
        {
            _useless = _known < Trial / 4;
            (_asked, _known) = (0, 0);
        }
    }

    private readonly record struct Entry(string? Text, T Value);
}
