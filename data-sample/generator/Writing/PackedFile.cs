using System.IO.Compression;
using System.Text;

namespace PartsSignal.SampleShop.Writing;

/// <summary>A gzip file of comma-separated rows; nothing in it dates it. Compare it unpacked: another version of the runtime may pack the same text otherwise.</summary>
internal sealed class PackedFile : IDisposable
{
    private readonly StreamWriter _writer;

    public PackedFile(string path)
    {
        var gzip = new GZipStream(File.Create(path), CompressionLevel.Optimal);
        _writer = new StreamWriter(gzip, new UTF8Encoding(false), 1 << 16) { NewLine = "\n" };
    }

    public void Row(params ReadOnlySpan<string> cells)
    {
        for (int i = 0; i < cells.Length; i++)
        {
            if (i > 0)
            {
                _writer.Write(',');
            }

            _writer.Write(cells[i]);
        }

        _writer.WriteLine();
    }

    public void Dispose() => _writer.Dispose();
}
