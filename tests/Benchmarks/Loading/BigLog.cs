using System.Text;
using CsvHelper;

namespace PartsSignal.Benchmarks.Loading;

/// <summary>Writes a long job log: each row of a small one is cut once into what stays and what changes, and stamped again and again.</summary>
internal sealed class BigLog
{
    private readonly byte[] _header;
    private readonly RowStencil[] _rows;
    private readonly int _vans;
    private readonly long _recent;
    private readonly long _earlier;

    /// <summary>Reads the small log.</summary>
    /// <param name="path">The small log.</param>
    /// <param name="vans">Vans and technicians to name.</param>
    /// <param name="yearRows">Jobs of a year: tells how many rows back a visit of last winter or of last week lies.</param>
    public BigLog(string path, long vans, long yearRows)
    {
        List<string[]> small = Read(path);
        _header = Encoding.UTF8.GetBytes(string.Join(',', small[0]) + "\n");
        _rows = [.. small.Skip(1).Select(r => RowStencil.Of(small[0], r))];
        _vans = (int)Math.Min(vans, int.MaxValue);
        _recent = Whole(yearRows / 30);
        _earlier = Whole(yearRows * 2 / 3);
    }

    /// <summary>Writes the rows of one file, evenly over its days.</summary>
    /// <param name="file">Where to.</param>
    /// <param name="from">Number of the first row.</param>
    /// <param name="to">Number after the last.</param>
    /// <param name="first">First day.</param>
    /// <param name="last">Last day.</param>
    public void Write(Stream file, long from, long to, DateOnly first, DateOnly last)
    {
        var days = new DayTexts(first, last);
        byte[] buffer = new byte[(1 << 20) + RowStencil.MostBytes];
        int at = 0;
        file.Write(_header);
        for (long i = from; i < to; i++)
        {
            int day = (int)((Int128)(last.DayNumber - first.DayNumber + 1) * (i - from) / (to - from));
            int van = (int)(((ulong)i * 0x9E3779B97F4A7C15UL >> 33) % (ulong)_vans) + 1;
            at += _rows[i % _rows.Length].Stamp(buffer.AsSpan(at), new RowStamp(i, Appliance(i), day, van), days);
            if (at >= 1 << 20)
            {
                file.Write(buffer, 0, at);
                at = 0;
            }
        }

        file.Write(buffer, 0, at);
    }

    // Rows of one stencil are one kind of appliance, so a visit before is a whole number of rounds back.
    private long Appliance(long i)
    {
        long back = i % 25 == 0 ? _recent : i % 5 == 0 ? _earlier : 0;
        return i >= back ? i - back : i;
    }

    private long Whole(long rows) => Math.Max(1, rows / _rows.Length) * _rows.Length;

    private static List<string[]> Read(string path)
    {
        using var csv = CsvReader.FromFile(path, new CsvReaderOptions { HasHeader = false, Separator = ',' });
        var rows = new List<string[]>();
        while (csv.Read())
        {
            rows.Add([.. Enumerable.Range(0, csv.FieldCount).Select(csv.GetString)]);
        }

        return [.. rows.Where(r => r.Length == rows[0].Length)];
    }
}
