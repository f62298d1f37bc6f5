namespace PartsSignal.Pipeline.Reading;

/// <summary>
/// The bytes of an input file. Whatever goes wrong while they are read is a fault of that file and names it; a small
/// packed file cannot fill the machine.
/// </summary>
internal sealed class GuardedStream(Stream inner, string name, long? packedBytes, ReadingLimits limits) : Stream
{
    private const long FreeBytes = 64L << 20;
    private readonly Crc32 _crc = new();
    private long _out;
    private bool _ended;

    /// <summary>Closed with this stream.</summary>
    public IDisposable? Owner { get; init; }

    /// <summary>Length and CRC-32 that the bytes must have at their end; null: nobody says.</summary>
    public (long Length, uint Crc)? Expected { get; init; }

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
        catch (Exception bad) when (bad is InvalidDataException or NotSupportedException)
        {
            throw new FileRefusedException(name, FileFaults.BrokenPacking(bad.Message));
        }
        catch (Exception bad) when (bad is IOException or UnauthorizedAccessException)
        {
            throw new FileRefusedException(name, FileFaults.Unreadable);
        }

        _out += n;
        if (packedBytes is { } packed)
        {
            Limit(packed);
        }

        if (Expected is { } expected && buffer.Length > 0)
        {
            Compare(expected, buffer[..n]);
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

    private void Limit(long packed)
    {
        if (_out > limits.MaxUnpackedBytes)
        {
            throw new FileRefusedException(name, FileFaults.TooLarge($"The file unpacks to more than {limits.MaxUnpackedBytes} bytes.", "maxUnpackedBytes"));
        }

        if (_out > FreeBytes && _out / Math.Max(1, packed) > limits.MaxUnpackRatio)
        {
            throw new FileRefusedException(name, FileFaults.TooLarge($"The file unpacks to more than {limits.MaxUnpackRatio} times its size.", "maxUnpackRatio"));
        }
    }

    private void Compare((long Length, uint Crc) expected, ReadOnlySpan<byte> read)
    {
        _crc.Add(read);
        if (read.Length == 0 && !_ended)
        {
            _ended = true;
            if (_out != expected.Length || _crc.Value != expected.Crc)
            {
                throw new FileRefusedException(name, FileFaults.BrokenPacking("its check sum says so"));
            }
        }
    }
}
