using System.Buffers;
using System.Globalization;
using System.IO.Hashing;
using System.Text;

namespace PartsSignal.Pipeline.Reading;

/// <summary>What one pass over a file's unpacked bytes tells before any row is read.</summary>
/// <param name="Checksum">XXH3 of 128 bits (Collet 2019): tells whether they are the same when they are read again, now or at the next load.</param>
/// <param name="Bytes">How many there are.</param>
/// <param name="Mark">Encoding named by a byte order mark, or UTF-16 told by its zeros; null: neither.</param>
/// <param name="MarkBytes">Length of the byte order mark.</param>
/// <param name="ValidUtf8">Characters above ASCII that are valid UTF-8.</param>
/// <param name="InvalidUtf8">Bytes that are no valid UTF-8.</param>
/// <param name="Sample">Pieces of text that hold bytes above ASCII, each whole from a letter on, at most 64 KiB; for guessing an old encoding.</param>
internal sealed record ContentScan(UInt128 Checksum, long Bytes, Encoding? Mark, int MarkBytes, long ValidUtf8, long InvalidUtf8, byte[] Sample)
{
    /// <summary>The checksum as 32 hex digits, lower case.</summary>
    public string Hash { get; } = Checksum.ToString("x32", CultureInfo.InvariantCulture);

    private const int BlockBytes = 1 << 18;
    private const int SampleBytes = 1 << 16;
    private const int PieceBytes = 60;

    /// <summary>Reads a file to its end.</summary>
    public static ContentScan Read(InputFile file, ReadingLimits limits, CancellationToken cancellation)
    {
        using Stream bytes = file.Open(limits);
        return Read(bytes, cancellation);
    }

    /// <summary>Reads a stream to its end.</summary>
    public static ContentScan Read(Stream stream, CancellationToken cancellation)
    {
        byte[] block = ArrayPool<byte>.Shared.Rent(BlockBytes + 4);
        try
        {
            return Read(stream, block, cancellation);
        }
        finally
        {
            ArrayPool<byte>.Shared.Return(block);
        }
    }

    private static ContentScan Read(Stream stream, byte[] block, CancellationToken cancellation)
    {
        var checksum = new XxHash128();
        var sample = new MemoryStream();
        (Encoding? Encoding, int Length) mark = default;
        long total = 0, valid = 0, invalid = 0;
        int carried = 0;
        while (true)
        {
            cancellation.ThrowIfCancellationRequested();
            int n = stream.ReadAtLeast(block.AsSpan(carried, BlockBytes), BlockBytes, throwOnEndOfStream: false);
            checksum.Append(block.AsSpan(carried, n));
            Span<byte> all = block.AsSpan(0, carried + n);
            if (total == 0)
            {
                mark = MarkOf(all);
            }

            total += n;
            bool last = n < BlockBytes;
            carried = mark.Encoding is null ? Count(all, last, sample, ref valid, ref invalid) : 0;
            all[^carried..].CopyTo(block);
            if (last)
            {
                return new ContentScan(checksum.GetCurrentHashAsUInt128(), total, mark.Encoding, mark.Length, valid, invalid, sample.ToArray());
            }
        }
    }

    // Returns how many bytes at the end are the start of a character that the next block completes.
    private static int Count(ReadOnlySpan<byte> bytes, bool last, MemoryStream sample, ref long valid, ref long invalid)
    {
        int from = 0, sampled = 0;
        while (true)
        {
            int next = bytes[from..].IndexOfAnyExceptInRange((byte)0, (byte)0x7f);
            if (next < 0)
            {
                return 0;
            }

            int i = from + next;
            OperationStatus status = Rune.DecodeFromUtf8(bytes[i..], out _, out int used);
            if (status == OperationStatus.NeedMoreData && !last)
            {
                return bytes.Length - i;
            }

            if (status != OperationStatus.Done && i >= sampled && sample.Length < SampleBytes)
            {
                (int first, int end) = Piece(bytes, i);
                first = Math.Max(first, sampled);
                sample.Write(bytes[first..end]);
                sample.WriteByte((byte)'\n');
                sampled = end;
            }

            valid += status == OperationStatus.Done ? 1 : 0;
            invalid += status == OperationStatus.Done ? 0 : 1;
            from = i + used;
        }
    }

    // The words around a byte above ASCII, cut only beside plain letters: half a character of two bytes would mislead.
    private static (int First, int End) Piece(ReadOnlySpan<byte> bytes, int at)
    {
        int first = Math.Max(0, at - PieceBytes), end = Math.Min(bytes.Length, at + PieceBytes);
        while (first < at && first > 0 && (bytes[first] >= 0x80 || bytes[first - 1] >= 0x80))
        {
            first++;
        }

        while (end < bytes.Length && end < at + (4 * PieceBytes) && bytes[end - 1] >= 0x80)
        {
            end++;
        }

        return (first, end);
    }

    private static bool StartsWith(ReadOnlySpan<byte> bytes, ReadOnlySpan<byte> mark) => bytes.StartsWith(mark);

    private static (Encoding?, int) MarkOf(ReadOnlySpan<byte> start)
    {
        if (StartsWith(start, [0xef, 0xbb, 0xbf]))
        {
            return (Encoding.UTF8, 3);
        }

        if (StartsWith(start, [0xff, 0xfe, 0, 0]))
        {
            return (Encoding.UTF32, 4);
        }

        if (StartsWith(start, [0xff, 0xfe]))
        {
            return (Encoding.Unicode, 2);
        }

        if (StartsWith(start, [0xfe, 0xff]))
        {
            return (Encoding.BigEndianUnicode, 2);
        }

        // UTF-16 without a mark: text of this trade is mostly ASCII, so every other byte is zero.
        int pairs = Math.Min(start.Length, 4096) / 2;
        int high = 0, low = 0;
        for (int i = 0; i < pairs; i++)
        {
            high += start[2 * i] == 0 ? 1 : 0;
            low += start[(2 * i) + 1] == 0 ? 1 : 0;
        }

        return pairs >= 4 && low > pairs * 0.6 && high < pairs * 0.1 ? (Encoding.Unicode, 0)
            : pairs >= 4 && high > pairs * 0.6 && low < pairs * 0.1 ? (Encoding.BigEndianUnicode, 0)
            : (null, 0);
    }
}
