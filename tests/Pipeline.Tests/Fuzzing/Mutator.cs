namespace PartsSignal.Pipeline.Tests.Fuzzing;

/// <summary>Damages bytes at random, the same way for the same number: flips, cuts, doubles, and bits that readers stumble over.</summary>
internal static class Mutator
{
    private const int MostChanges = 8;
    private const int MostBytes = 20_000;

    private static readonly byte[][] Stumbling =
    [
        "\""u8.ToArray(), "\"\""u8.ToArray(), ","u8.ToArray(), ";"u8.ToArray(), "\t"u8.ToArray(), "|"u8.ToArray(), "\n"u8.ToArray(), "\r"u8.ToArray(), "\r\n"u8.ToArray(),
        [0], [0xff], [0xff, 0xfe], [0xfe, 0xff], [0xef, 0xbb, 0xbf], [0xed, 0xa0, 0x80], [0xc3], [0xf4, 0x8f, 0xbf, 0xbf],
        "=1+1"u8.ToArray(), "1E308"u8.ToArray(), "-99999999999999999999"u8.ToArray(), "0000-00-00"u8.ToArray(), "31/02/2026"u8.ToArray(), "PK\x03\x04"u8.ToArray(),
        "<!DOCTYPE x [<!ENTITY a \"b\">]>"u8.ToArray(), "</c>"u8.ToArray(), [0x1f, 0x8b, 8], new byte[64],
    ];

    /// <summary>The bytes, damaged in up to eight places.</summary>
    public static byte[] Damage(byte[] bytes, Random random)
    {
        var damaged = new List<byte>(bytes);
        for (int n = random.Next(1, MostChanges + 1); n > 0; n--)
        {
            Once(damaged, random);
        }

        return [.. damaged.Take(MostBytes)];
    }

    private static void Once(List<byte> bytes, Random random)
    {
        int at = random.Next(bytes.Count + 1);
        int length = Math.Min(bytes.Count - at, 1 << random.Next(10));
        switch (random.Next(7))
        {
            case 0 when bytes.Count > at:
                bytes[at] ^= (byte)(1 << random.Next(8));
                break;
            case 1 when bytes.Count > at:
                bytes[at] = (byte)random.Next(256);
                break;
            case 2:
                bytes.RemoveRange(at, length);
                break;
            case 3:
                bytes.InsertRange(random.Next(bytes.Count + 1), bytes.GetRange(at, length));
                break;
            case 4 when random.Next(4) == 0:
                bytes.RemoveRange(at, bytes.Count - at);
                break;
            default:
                bytes.InsertRange(at, Stumbling[random.Next(Stumbling.Length)]);
                break;
        }
    }
}
