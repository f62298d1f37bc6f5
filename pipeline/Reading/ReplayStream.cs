namespace PartsSignal.Pipeline.Reading;

/// <summary>
/// A stream that can go back to any place since <see cref="KeepFrom"/>, so that a reader that was misled by one bad
/// row can be set on the next line again, whatever the bytes come from.
/// </summary>
internal sealed class ReplayStream(Stream inner) : Stream
{
    private byte[] _kept = new byte[1 << 17];
    private long _start;
    private int _length;
    private long _position;

    /// <summary>Bytes before this place may be forgotten.</summary>
    public long KeepFrom { get; set; }

    public override bool CanRead => true;

    public override bool CanSeek => false;

    public override bool CanWrite => false;

    public override long Length => throw new NotSupportedException();

    public override long Position
    {
        get => _position;
        set => throw new NotSupportedException();
    }

    /// <summary>Goes back (or on) to a place at or after <see cref="KeepFrom"/> that was already read.</summary>
    public void GoTo(long position)
    {
        if (position < _start || position > _start + _length)
        {
            throw new ArgumentOutOfRangeException(nameof(position));
        }

        _position = position;
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
            long at = _position;
            int n = Read(chunk);
            int end = chunk[..n].IndexOfAny((byte)'\n', (byte)'\r');
            ReadOnlySpan<byte> part = end < 0 ? chunk[..n] : chunk[..end];
            kept.Write(part[..Math.Min(part.Length, (int)Math.Max(0, keep - kept.Length))]);
            if (n == 0 || end >= 0)
            {
                line = kept.ToArray();
                return n == 0 ? at : AfterBreak(at + end, chunk[end]);
            }

            KeepFrom = _position;
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

        int ahead = (int)(_start + _length - _position);
        if (ahead == 0)
        {
            ahead = Fetch(buffer.Length);
        }

        int n = Math.Min(ahead, buffer.Length);
        _kept.AsSpan((int)(_position - _start), n).CopyTo(buffer);
        _position += n;
        return n;
    }

    public override int Read(byte[] buffer, int offset, int count) => Read(buffer.AsSpan(offset, count));

    public override void Flush()
    {
    }

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    protected override void Dispose(bool disposing)
    {
        if (disposing)
        {
            inner.Dispose();
        }

        base.Dispose(disposing);
    }

    private int Fetch(int wanted)
    {
        int drop = (int)Math.Clamp(Math.Min(KeepFrom, _position) - _start, 0, _length);
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

        int n = inner.Read(_kept.AsSpan(_length, wanted));
        _length += n;
        return n;
    }
}
