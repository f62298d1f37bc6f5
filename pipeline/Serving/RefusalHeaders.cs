using System.IO.Pipelines;
using System.Text;
using Microsoft.AspNetCore.Connections;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Server.Kestrel.Core;

namespace PartsSignal.Pipeline.Serving;

/// <summary>
/// Gives the strict headers to the answers that the web server writes by itself, before any code of ours sees the request:
/// a request that is not HTTP, a line that is too long, a header that never ended.
/// </summary>
internal static class RefusalHeaders
{
    private static readonly byte[] Lines = HeaderLines();

    /// <summary>Watches every connection of an address.</summary>
    public static void Use(ListenOptions listen) => listen.Use(next => connection => WatchAsync(connection, next));

    /// <summary>The bytes to send: a bare refusal with the headers added, anything else as it is.</summary>
    internal static ReadOnlyMemory<byte> WithHeaders(ReadOnlyMemory<byte> sent)
    {
        ReadOnlySpan<byte> bytes = sent.Span;
        if (!bytes.StartsWith("HTTP/1.1 4"u8) || !bytes.EndsWith("\r\n\r\n"u8) || bytes.IndexOf("\r\nContent-Length: 0\r\n"u8) < 0 || bytes.IndexOf("\r\nContent-Security-Policy: "u8) >= 0)
        {
            return sent;
        }

        int statusLine = bytes.IndexOf("\r\n"u8) + 2;
        return (byte[])[.. bytes[..statusLine], .. Lines, .. bytes[statusLine..]];
    }

    private static async Task WatchAsync(ConnectionContext connection, ConnectionDelegate next)
    {
        IDuplexPipe plain = connection.Transport;
        await using Stream sent = plain.Output.AsStream(leaveOpen: true);
        var output = PipeWriter.Create(new Refusals(sent), new StreamPipeWriterOptions(leaveOpen: true));
        connection.Transport = new Watched(plain.Input, output);
        try
        {
            await next(connection).ConfigureAwait(false);
        }
        finally
        {
            await output.CompleteAsync().ConfigureAwait(false);
            connection.Transport = plain;
        }
    }

    private static byte[] HeaderLines()
    {
        var headers = new HeaderDictionary();
        RequestGuard.Strict(headers);
        return Encoding.ASCII.GetBytes(string.Concat(headers.Select(h => $"{h.Key}: {h.Value}\r\n")));
    }

    private sealed record Watched(PipeReader Input, PipeWriter Output) : IDuplexPipe;

    private sealed class Refusals(Stream inner) : Stream
    {
        public override bool CanRead => false;

        public override bool CanSeek => false;

        public override bool CanWrite => true;

        public override long Length => throw new NotSupportedException();

        public override long Position { get => throw new NotSupportedException(); set => throw new NotSupportedException(); }

        public override void Write(byte[] buffer, int offset, int count) => inner.Write(WithHeaders(buffer.AsMemory(offset, count)).Span);

        public override Task WriteAsync(byte[] buffer, int offset, int count, CancellationToken cancellationToken) =>
            WriteAsync(buffer.AsMemory(offset, count), cancellationToken).AsTask();

        public override ValueTask WriteAsync(ReadOnlyMemory<byte> buffer, CancellationToken cancellationToken = default) =>
            inner.WriteAsync(WithHeaders(buffer), cancellationToken);

        public override void Flush() => inner.Flush();

        public override Task FlushAsync(CancellationToken cancellationToken) => inner.FlushAsync(cancellationToken);

        public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();
    }
}
