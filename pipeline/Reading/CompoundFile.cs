using System.Buffers.Binary;
using System.Text;

namespace PartsSignal.Pipeline.Reading;

/// <summary>One stream out of a compound file ([MS-CFB]), the container of older workbooks.</summary>
internal sealed class CompoundFile
{
    private const uint MostSectors = 0xfffffffa;
    private const int HeaderBytes = 512;
    private const int EntryBytes = 128;
    private readonly byte[] _file;
    private readonly int _sectorBytes;
    private readonly List<uint> _next = [];

    /// <summary>Reads the chains.</summary>
    /// <exception cref="InvalidDataException">The bytes are no compound file.</exception>
    public CompoundFile(byte[] file)
    {
        _file = file;
        int shift = file.Length < HeaderBytes ? 0 : BinaryPrimitives.ReadUInt16LittleEndian(file.AsSpan(30));
        if (shift is not (9 or 12))
        {
            throw new InvalidDataException("it is no compound file");
        }

        _sectorBytes = 1 << shift;
        var tables = new List<uint>();
        for (int at = 76; at < HeaderBytes; at += 4)
        {
            tables.Add(Word(at));
        }

        // More tables than the header has room for stand in a chain of their own.
        uint list = Word(68);
        for (int n = 0; list < MostSectors && n < file.Length / _sectorBytes; n++)
        {
            uint[] words = [.. Words(list)];
            tables.AddRange(words[..^1]);
            list = words[^1];
        }

        foreach (uint table in tables.Where(t => t < MostSectors))
        {
            _next.AddRange(Words(table));
        }
    }

    /// <summary>Bytes of the stream with one of these names; null: there is none.</summary>
    public byte[]? Find(params ReadOnlySpan<string> names)
    {
        byte[] directory = Chain(Word(48));
        for (int at = 0; at + EntryBytes <= directory.Length; at += EntryBytes)
        {
            int length = Math.Clamp(BinaryPrimitives.ReadUInt16LittleEndian(directory.AsSpan(at + 64)) - 2, 0, 62);
            string name = Encoding.Unicode.GetString(directory, at, length);
            if (names.Contains(name))
            {
                return Chain(BinaryPrimitives.ReadUInt32LittleEndian(directory.AsSpan(at + 116)));
            }
        }

        return null;
    }

    private byte[] Chain(uint sector)
    {
        using var bytes = new MemoryStream();
        for (int n = 0; sector < _next.Count && n < _next.Count; n++)
        {
            bytes.Write(Sector(sector));
            sector = _next[(int)sector];
        }

        return bytes.ToArray();
    }

    private ReadOnlySpan<byte> Sector(uint sector)
    {
        long start = (sector + 1L) * _sectorBytes;
        return start >= _file.Length ? [] : _file.AsSpan((int)start, (int)Math.Min(_sectorBytes, _file.Length - start));
    }

    private List<uint> Words(uint sector)
    {
        ReadOnlySpan<byte> bytes = Sector(sector);
        var words = new List<uint>(_sectorBytes / 4);
        for (int at = 0; at < _sectorBytes; at += 4)
        {
            words.Add(at + 4 <= bytes.Length ? BinaryPrimitives.ReadUInt32LittleEndian(bytes[at..]) : uint.MaxValue);
        }

        return words;
    }

    private uint Word(int at) => BinaryPrimitives.ReadUInt32LittleEndian(_file.AsSpan(at));
}
