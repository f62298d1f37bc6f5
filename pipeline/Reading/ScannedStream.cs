using System.IO.Hashing;

namespace PartsSignal.Pipeline.Reading;

/// <summary>
/// The bytes of a file that was scanned before. Where they are others by now, the file was changed between: whoever
/// reads to the end either got what was scanned or learns of it.
/// </summary>
internal sealed class ScannedStream(Stream inner, string name, ContentScan scan) : ForwardStream(inner)
{
    private readonly XxHash128 _checksum = new();
    private bool _ended;

    /// <summary>Reads on.</summary>
    /// <exception cref="FileRefusedException">The file was changed.</exception>
    public override int Read(Span<byte> buffer)
    {
        int n = Inner.Read(buffer);
        _checksum.Append(buffer[..n]);
        At += n;
        bool ends = n == 0 && buffer.Length > 0 && !_ended;
        _ended |= ends;
        return At > scan.Bytes || (ends && _checksum.GetCurrentHashAsUInt128() != scan.Checksum)
            ? throw new FileRefusedException(name, FileFaults.Changed)
            : n;
    }
}
