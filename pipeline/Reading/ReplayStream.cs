namespace PartsSignal.Pipeline.Reading;

/// <summary>
/// A stream that can go back to any place since <see cref="KeepFrom"/>, so that a reader that was misled by one bad
/// row can be set on the next line again, whatever the bytes come from.
/// </summary>
internal sealed class ReplayStream(Stream inner) : ForwardStream(inner)
{
    private byte[] _kept = new byte[1 << 17];
    private long _start;
    private int _length;

    /// <summary>Bytes before this place may be forgotten.</summary>
    public long KeepFrom { get; set; }

    /// <summary>Length of the whole stream, or null while its end was not met.</summary>
    public long? End { get; private set; }

    /// <summary>Goes back (or on) to a place at or after <see cref="KeepFrom"/> that was already read.</summary>
    public void GoTo(long position)
    {
        if (position < _start || position > _start + _length)
        {
            throw new ArgumentOutOfRangeException(nameof(position));
        }

        At = position;
    }

    /// <summary>
    /// Place after the line that starts at a place: the line's bytes are skipped, reading on where needed, and no more
    /// than <paramref name="keep"/> of its first bytes are returned.
    /// </summary>
    public long LineEnd(long from, int keep, out byte[] line)
    {
        GoTo(from);
        KeepFrom = from;
        var kept = new MemoryStream();
        Span<byte> chunk = stackalloc byte[4096];
        while (true)
        {
            long at = At;
            int n = Read(chunk);
            int end = chunk[..n].IndexOfAny((byte)'\n', (byte)'\r');
            ReadOnlySpan<byte> part = end < 0 ? chunk[..n] : chunk[..end];
            kept.Write(part[..Math.Min(part.Length, (int)Math.Max(0, keep - kept.Length))]);
            if (n == 0 || end >= 0)
            {
                line = kept.ToArray();
                return n == 0 ? at : AfterBreak(at + end, chunk[end]);
            }

            KeepFrom = At;
        }
    }

    private long AfterBreak(long at, byte mark)
    {
        GoTo(at + 1);
        Span<byte> next = stackalloc byte[1];
        return mark == '\r' && Read(next) == 1 && next[0] == '\n' ? at + 2 : at + 1;
    }

    public override int Read(Span<byte> buffer)
    {
        if (buffer.IsEmpty)
        {
            return 0;
        }

        int ahead = (int)(_start + _length - At);
        if (ahead == 0)
        {
            ahead = Fetch(buffer.Length);
        }

        int n = Math.Min(ahead, buffer.Length);
        _kept.AsSpan((int)(At - _start), n).CopyTo(buffer);
        At += n;
        return n;
    }

    private int Fetch(int wanted)
    {
        int drop = (int)Math.Clamp(Math.Min(KeepFrom, At) - _start, 0, _length);
        if (drop > 0)
        {
            _kept.AsSpan(drop, _length - drop).CopyTo(_kept);
            _start += drop;
            _length -= drop;
        }

        wanted = Math.Max(wanted, 1 << 14);
        if (_length + wanted > _kept.Length)
        {
            Array.Resize(ref _kept, Math.Max(_kept.Length * 2, _length + wanted));
        }

        int n = Inner.Read(_kept.AsSpan(_length, wanted));
        _length += n;
        End = n == 0 ? _start + _length : End;
        return n;
    }
}
