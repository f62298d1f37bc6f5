using System.IO.Hashing;

namespace PartsSignal.Pipeline.Reading;

/// <summary>
/// The bytes of an input file. Whatever goes wrong while they are read is a fault of that file and names it; a small
/// packed file cannot fill the machine.
/// </summary>
internal sealed class GuardedStream(Stream inner, string name, long? packedBytes, ReadingLimits limits) : ForwardStream(inner)
{
    private const long FreeBytes = 64L << 20;
    private readonly Crc32 _crc = new();
    private bool _ended;

    /// <summary>Closed with this stream.</summary>
    public IDisposable? Owner { get; init; }

    /// <summary>Length and CRC-32 that the bytes must have at their end; null: nobody says.</summary>
    public (long Length, uint Crc)? Expected { get; init; }

    public override int Read(Span<byte> buffer)
    {
        int n;
        try
        {
            n = Inner.Read(buffer);
        }
        catch (Exception bad) when (bad is InvalidDataException or NotSupportedException)
        {
            throw new FileRefusedException(name, FileFaults.BrokenPacking(bad.Message));
        }
        catch (Exception bad) when (bad is IOException or UnauthorizedAccessException)
        {
            throw new FileRefusedException(name, FileFaults.Unreadable);
        }

        At += n;
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

    protected override void Dispose(bool disposing)
    {
        base.Dispose(disposing);
        if (disposing)
        {
            Owner?.Dispose();
        }
    }

    private void Limit(long packed)
    {
        if (At > limits.MaxUnpackedBytes)
        {
            throw new FileRefusedException(name, FileFaults.TooLarge($"The file unpacks to more than {limits.MaxUnpackedBytes} bytes.", "maxUnpackedBytes"));
        }

        if (At > FreeBytes && At / Math.Max(1, packed) > limits.MaxUnpackRatio)
        {
            throw new FileRefusedException(name, FileFaults.TooLarge($"The file unpacks to more than {limits.MaxUnpackRatio} times its size.", "maxUnpackRatio"));
        }
    }

    private void Compare((long Length, uint Crc) expected, ReadOnlySpan<byte> read)
    {
        _crc.Append(read);
        if (read.Length == 0 && !_ended)
        {
            _ended = true;
            if (At != expected.Length || _crc.GetCurrentHashAsUInt32() != expected.Crc)
            {
                throw new FileRefusedException(name, FileFaults.BrokenPacking("its check sum says so"));
            }
        }
    }
}
