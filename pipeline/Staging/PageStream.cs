namespace PartsSignal.Pipeline.Staging;

/// <summary>
/// Output of a Parquet file. The Parquet writer flushes before every page and awaits every piece of it; this stream
/// buffers the pieces and writes synchronously, so that no thread is switched.
/// </summary>
/// <param name="path">The file, made anew.</param>
internal sealed class PageStream(string path) : Stream
{
    private const int BufferBytes = 1 << 18;
    private readonly FileStream _file = new(path, FileMode.Create, FileAccess.Write, FileShare.None, BufferBytes);

    public override bool CanRead => false;

    public override bool CanSeek => true;

    public override bool CanWrite => true;

    public override long Length => _file.Length;

    public override long Position
    {
        get => _file.Position;
        set => throw new NotSupportedException();
    }

    // A partial file is useless, so it is flushed on close only.
    public override void Flush()
    {
    }

    public override Task FlushAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    public override void Write(byte[] buffer, int offset, int count) => _file.Write(buffer, offset, count);

    public override void Write(ReadOnlySpan<byte> buffer) => _file.Write(buffer);

    public override Task WriteAsync(byte[] buffer, int offset, int count, CancellationToken cancellationToken)
    {
        _file.Write(buffer, offset, count);
        return Task.CompletedTask;
    }

    public override ValueTask WriteAsync(ReadOnlyMemory<byte> buffer, CancellationToken cancellationToken = default)
    {
        _file.Write(buffer.Span);
        return ValueTask.CompletedTask;
    }

    public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    protected override void Dispose(bool disposing)
    {
        if (disposing)
        {
            _file.Dispose();
        }
    }
}
