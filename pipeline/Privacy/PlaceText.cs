namespace PartsSignal.Pipeline.Privacy;

/// <summary>What of a customer's details stays the same however they are typed; only ever hashed.</summary>
public static class PlaceText
{
    private const int PhoneDigits = 9;

    /// <summary>Realm and text that stand for the place: the phone number, else the address, else the name; null: nothing usable.</summary>
    public static (string Realm, string Text)? Of(ReadOnlySpan<char> phone, ReadOnlySpan<char> address, ReadOnlySpan<char> name)
    {
        string digits = Digits(phone);
        if (digits.Length >= 7)
        {
            // Country and trunk prefixes come and go; the last digits stay.
            return ("phone", digits.Length > PhoneDigits ? digits[^PhoneDigits..] : digits.TrimStart('0'));
        }

        string place = Letters(address);
        if (place.Length >= 5)
        {
            return ("address", place);
        }

        string person = Letters(name);
        return person.Length >= 3 ? ("name", person) : null;
    }

    private static string Digits(ReadOnlySpan<char> text)
    {
        Span<char> kept = stackalloc char[32];
        int n = 0;
        foreach (char c in text)
        {
            if (char.IsAsciiDigit(c) && n < kept.Length)
            {
                kept[n++] = c;
            }
        }

        return n == 0 ? "" : new string(kept[..n]);
    }

    private static string Letters(ReadOnlySpan<char> text)
    {
        if (text.IsWhiteSpace())
        {
            return "";
        }

        Span<char> kept = text.Length <= 256 ? stackalloc char[text.Length] : new char[text.Length];
        int n = 0;
        foreach (char c in text)
        {
            if (char.IsLetterOrDigit(c))
            {
                kept[n++] = char.ToLowerInvariant(c);
            }
        }

        return new string(kept[..n]);
    }
}
