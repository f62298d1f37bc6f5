using System.Buffers.Binary;

namespace PartsSignal.Pipeline.Reading;

/// <summary>The check sum of zip entries: CRC-32 of ISO/IEC 3309, four bytes at a time.</summary>
internal sealed class Crc32
{
    private const uint Polynomial = 0xEDB88320;
    private static readonly uint[][] Tables = MakeTables();
    private uint _state = uint.MaxValue;

    /// <summary>The sum of the bytes so far.</summary>
    public uint Value => ~_state;

    /// <summary>Adds bytes.</summary>
    public void Add(ReadOnlySpan<byte> bytes)
    {
        uint state = _state;
        for (; bytes.Length >= 4; bytes = bytes[4..])
        {
            state ^= BinaryPrimitives.ReadUInt32LittleEndian(bytes);
            state = Tables[3][state & 0xff] ^ Tables[2][(state >> 8) & 0xff] ^ Tables[1][(state >> 16) & 0xff] ^ Tables[0][state >> 24];
        }

        foreach (byte b in bytes)
        {
            state = Tables[0][(state ^ b) & 0xff] ^ (state >> 8);
        }

        _state = state;
    }

    private static uint[][] MakeTables()
    {
        uint[][] tables = [new uint[256], new uint[256], new uint[256], new uint[256]];
        for (uint i = 0; i < 256; i++)
        {
            uint value = i;
            for (int bit = 0; bit < 8; bit++)
            {
                value = (value & 1) == 0 ? value >> 1 : (value >> 1) ^ Polynomial;
            }

            tables[0][i] = value;
        }

        for (int t = 1; t < 4; t++)
        {
            for (int i = 0; i < 256; i++)
            {
                uint before = tables[t - 1][i];
                tables[t][i] = tables[0][before & 0xff] ^ (before >> 8);
            }
        }

        return tables;
    }
}
