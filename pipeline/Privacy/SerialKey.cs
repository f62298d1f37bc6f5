using PartsSignal.Analysis.CrossReference;

namespace PartsSignal.Pipeline.Privacy;

/// <summary>The identifier an appliance gets from its serial: letters and digits of the serial, within its brand.</summary>
internal static class SerialKey
{
    private const int LeastCharacters = 3;

    /// <summary>The identifier, or null if too short to tell appliances apart.</summary>
    /// <param name="key">The shop's key.</param>
    /// <param name="brand">Brand, or null if not known.</param>
    /// <param name="serial">Serial as typed.</param>
    public static string? Create(IdentityKey key, string? brand, string? serial) => Digest(brand, serial) is { } digest ? key.Identify(digest) : null;

    /// <summary>The digest that <see cref="IdentityKey"/> makes the identifier of, or null if too short to tell appliances apart.</summary>
    public static UInt128? Digest(ReadOnlySpan<char> brand, ReadOnlySpan<char> serial)
    {
        int most = brand.Length + serial.Length + 1;
        Span<char> text = most <= 256 ? stackalloc char[most] : new char[most];
        int before = CompactKey.From(brand, text);
        text[before++] = '/';
        int length = CompactKey.From(serial, text[before..]);
        return length < LeastCharacters ? null : IdentityKey.Digest(IdentityRealm.Serial, text[..(before + length)]);
    }
}
