using PartsSignal.Pipeline.Commands;

namespace PartsSignal.Pipeline.Reading;

/// <summary>Stops a small packed file from filling the machine, and names the file when its packing is broken.</summary>
internal sealed class UnpackGuard(Stream inner, string name, long packedBytes, ReadingLimits limits) : Stream
{
    private const long FreeBytes = 64L << 20;
    private long _out;

    /// <summary>Closed with this stream.</summary>
    public IDisposable? Owner { get; init; }

    public override bool CanRead => true;

    public override bool CanSeek => false;

    public override bool CanWrite => false;

    public override long Length => throw new NotSupportedException();

    public override long Position
    {
        get => _out;
        set => throw new NotSupportedException();
    }

    public override int Read(Span<byte> buffer)
    {
        int n;
        try
        {
            n = inner.Read(buffer);
        }
        catch (InvalidDataException bad)
        {
            throw new BadInputException($"{name}: the packed data is broken ({bad.Message}). Pack it again.");
        }

        _out += n;
        if (_out > limits.MaxUnpackedBytes)
        {
            throw new BadInputException($"{name}: unpacks to more than {limits.MaxUnpackedBytes:N0} bytes. Raise limits.maxUnpackedBytes if it is meant.");
        }

        if (_out > FreeBytes && _out / Math.Max(1, packedBytes) > limits.MaxUnpackRatio)
        {
            throw new BadInputException($"{name}: unpacks to more than {limits.MaxUnpackRatio} times its size. Raise limits.maxUnpackRatio if it is meant.");
        }

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
            Owner?.Dispose();
        }

        base.Dispose(disposing);
    }
}
