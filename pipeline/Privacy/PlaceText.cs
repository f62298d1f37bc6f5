namespace PartsSignal.Pipeline.Privacy;

/// <summary>Normalizes phone, address and name into a matching key; only its hash is stored.</summary>
internal static class PlaceText
{
    private const int PhoneDigits = 9;
    private const int MostDigits = 32;

    /// <summary>Realm and text that stand for the place: the phone number, else the address, else the name, or null if nothing is usable.</summary>
    public static (IdentityRealm Realm, string Text)? Parse(ReadOnlySpan<char> phone, ReadOnlySpan<char> address, ReadOnlySpan<char> name)
    {
        int most = Room(phone, address, name);
        Span<char> text = most <= 512 ? stackalloc char[most] : new char[most];
        return Write(phone, address, name, text, out int length) is { } realm ? (realm, text[..length].ToString()) : null;
    }

    /// <summary>The digest of the place, or null if nothing is usable.</summary>
    public static UInt128? Digest(ReadOnlySpan<char> phone, ReadOnlySpan<char> address, ReadOnlySpan<char> name)
    {
        int most = Room(phone, address, name);
        Span<char> text = most <= 512 ? stackalloc char[most] : new char[most];
        return Write(phone, address, name, text, out int length) is { } realm ? IdentityKey.Digest(realm, text[..length]) : null;
    }

    private static int Room(ReadOnlySpan<char> phone, ReadOnlySpan<char> address, ReadOnlySpan<char> name) =>
        Math.Max(MostDigits, Math.Max(phone.Length, Math.Max(address.Length, name.Length)));

    private static IdentityRealm? Write(ReadOnlySpan<char> phone, ReadOnlySpan<char> address, ReadOnlySpan<char> name, Span<char> text, out int length)
    {
        length = Digits(phone, text);
        if (length >= 7)
        {
            // Country and trunk prefixes come and go; the last digits stay.
            Span<char> digits = text[..length];
            ReadOnlySpan<char> kept = length > PhoneDigits ? digits[^PhoneDigits..] : digits.TrimStart('0');
            length = kept.Length;
            kept.CopyTo(text);
            return IdentityRealm.Phone;
        }

        length = Letters(address, text);
        if (length >= 5)
        {
            return IdentityRealm.Address;
        }

        length = Letters(name, text);
        return length >= 3 ? IdentityRealm.Customer : null;
    }

    private static int Digits(ReadOnlySpan<char> text, Span<char> kept)
    {
        int n = 0;
        foreach (char c in text)
        {
            if (char.IsAsciiDigit(c) && n < MostDigits)
            {
                kept[n++] = c;
            }
        }

        return n;
    }

    private static int Letters(ReadOnlySpan<char> text, Span<char> kept)
    {
        int n = 0;
        foreach (char c in text)
        {
            if (char.IsLetterOrDigit(c))
            {
                kept[n++] = char.ToLowerInvariant(c);
            }
        }

        return n;
    }
}
