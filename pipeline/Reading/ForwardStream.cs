namespace PartsSignal.Pipeline.Reading;

/// <summary>A stream that is read from its start to its end and closes the one behind it.</summary>
/// <param name="inner">The one behind it.</param>
internal abstract class ForwardStream(Stream inner) : Stream
{
    public sealed override bool CanRead => true;

    public sealed override bool CanSeek => false;

    public sealed override bool CanWrite => false;

    public sealed override long Length => throw new NotSupportedException();

    public sealed override long Position
    {
        get => At;
        set => throw new NotSupportedException();
    }

    /// <summary>Bytes read so far.</summary>
    protected long At { get; set; }

    /// <summary>The stream behind this one.</summary>
    protected Stream Inner { get; } = inner;

    public abstract override int Read(Span<byte> buffer);

    public sealed override int Read(byte[] buffer, int offset, int count) => Read(buffer.AsSpan(offset, count));

    public sealed override void Flush()
    {
    }

    public sealed override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public sealed override void SetLength(long value) => throw new NotSupportedException();

    public sealed override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    protected override void Dispose(bool disposing)
    {
        if (disposing)
        {
            Inner.Dispose();
        }

        base.Dispose(disposing);
    }
}
