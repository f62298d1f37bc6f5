using PartsSignal.Analysis.CrossReference;

namespace PartsSignal.Pipeline.Privacy;

/// <summary>The identifier an appliance gets from its serial: letters and digits of the serial, within its brand.</summary>
public static class SerialKey
{
    private const int LeastCharacters = 3;

    /// <summary>The identifier; null: too short to tell appliances apart.</summary>
    /// <param name="key">The shop's key.</param>
    /// <param name="brand">Brand; null: not known.</param>
    /// <param name="serial">Serial as typed.</param>
    public static string? Of(IdentityKey key, string? brand, string? serial)
    {
        Span<char> identifier = stackalloc char[IdentityKey.IdentifierLength];
        return TryOf(key, brand, serial, identifier) ? identifier.ToString() : null;
    }

    /// <summary>The same without a string: fills <see cref="IdentityKey.IdentifierLength"/> characters, or returns false.</summary>
    public static bool TryOf(IdentityKey key, ReadOnlySpan<char> brand, ReadOnlySpan<char> serial, Span<char> identifier)
    {
        int most = brand.Length + serial.Length + 1;
        Span<char> text = most <= 256 ? stackalloc char[most] : new char[most];
        int before = CompactKey.Of(brand, text);
        text[before++] = '/';
        int length = CompactKey.Of(serial, text[before..]);
        if (length < LeastCharacters)
        {
            return false;
        }

        key.Identify("serial", text[..(before + length)], identifier);
        return true;
    }
}
