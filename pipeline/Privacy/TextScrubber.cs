using System.Buffers;
using System.Text;
using System.Text.RegularExpressions;

namespace PartsSignal.Pipeline.Privacy;

/// <summary>
/// Takes personal data out of free text: e-mail addresses, card numbers, phone numbers, street addresses, and the
/// names, numbers and addresses that the same row holds in other cells. What is taken out leaves a mark such as
/// <c>[phone]</c>. Dates and short codes stay. When in doubt it takes out.
/// </summary>
internal static partial class TextScrubber
{
    private const int ShortestName = 3;
    private static readonly SearchValues<char> NameBreaks = SearchValues.Create(" ,.;/&\t");
    private static readonly SearchValues<char> Digits = SearchValues.Create("0123456789");

    // Words without which the patterns below cannot match: most texts hold none.
    private static readonly SearchValues<string> Titles = SearchValues.Create(["mr", "ms", "miss", "mx", "dr", "herr", "frau", "mme", "sig"], StringComparison.OrdinalIgnoreCase);
    private static readonly SearchValues<string> Calls = SearchValues.Create(["ask", "call", "ring", "phone", "speak to", "contact", "tenant", "customer", "owner", "cust"], StringComparison.Ordinal);

    /// <summary>The text without personal data; the same instance when there was none.</summary>
    /// <param name="text">Free text.</param>
    public static string Scrub(string text)
    {
        string scrubbed = text;
        if (scrubbed.Contains('@'))
        {
            scrubbed = Email().Replace(scrubbed, "[e-mail]");
        }

        if (scrubbed.AsSpan().ContainsAny(Digits))
        {
            scrubbed = LongNumber().Replace(scrubbed, Number);
            scrubbed = Street().Replace(scrubbed, "[address]");
        }

        scrubbed = scrubbed.AsSpan().ContainsAny(Titles) ? TitledName().Replace(scrubbed, "[name]") : scrubbed;
        return scrubbed.AsSpan().ContainsAny(Calls) ? CalledName().Replace(scrubbed, "${1}[name]") : scrubbed;
    }

    /// <summary>The text without the words of a cell that holds personal data; blind to case.</summary>
    /// <param name="text">Free text, already scrubbed.</param>
    /// <param name="cell">Name, phone, e-mail or address of the same row.</param>
    /// <param name="mark">What to leave, for example <c>[name]</c>.</param>
    public static string Remove(string text, ReadOnlySpan<char> cell, string mark)
    {
        cell = cell.Trim();
        if (cell.Length < ShortestName || text.Length < ShortestName)
        {
            return text;
        }

        if (Has(text, cell))
        {
            text = text.Replace(cell.ToString(), mark, StringComparison.OrdinalIgnoreCase);
        }

        return text;
    }

    /// <summary>False when none of the customer's cells can stand in a text with these pairs of letters, so that nothing need be looked for.</summary>
    /// <param name="text">Pairs of letters of the text.</param>
    /// <param name="name">Name of the same row.</param>
    /// <param name="phone">Its phone.</param>
    /// <param name="address">Its address.</param>
    /// <param name="email">Its e-mail.</param>
    public static bool MayName(LetterPairs text, ReadOnlySpan<char> name, ReadOnlySpan<char> phone, ReadOnlySpan<char> address, ReadOnlySpan<char> email)
    {
        // Where the whole can stand, its first line can.
        address = address.Trim();
        int comma = address.IndexOf(',');
        return text.MayHoldAny(name, NameBreaks, ShortestName)
            || MayHold(text, phone)
            || MayHold(text, comma <= 0 ? address : address[..comma])
            || MayHold(text, email);
    }

    /// <summary>The text without an address, and without its first line where that is all that stands there.</summary>
    public static string RemoveAddress(string text, ReadOnlySpan<char> address)
    {
        text = Remove(text, address, "[address]");
        int comma = address.IndexOf(',');
        return comma >= 6 && address[..comma].ContainsAny(Digits) ? Remove(text, address[..comma], "[address]") : text;
    }

    /// <summary>The text without the words of a name that stand in it as whole words; titles and short words stay.</summary>
    public static string RemoveName(string text, ReadOnlySpan<char> name)
    {
        text = Remove(text, name, "[name]");
        foreach (Range range in name.SplitAny(NameBreaks))
        {
            ReadOnlySpan<char> word = name[range];
            if (word.Length >= ShortestName && Has(text, word))
            {
                text = Regex.Replace(text, $@"(?<!\w){Regex.Escape(word.ToString())}(?!\w)", "[name]", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant);
            }
        }

        return text;
    }

    // Trimmed as those trim that look for it.
    private static bool MayHold(LetterPairs text, ReadOnlySpan<char> cell)
    {
        cell = cell.Trim();
        return !cell.IsEmpty && text.MayHold(cell);
    }

    // Blind to case. The framework's own search looks at every place one by one.
    private static bool Has(ReadOnlySpan<char> text, ReadOnlySpan<char> cell)
    {
        if (!Ascii.IsValid(cell) || !Ascii.IsValid(text))
        {
            return text.Contains(cell, StringComparison.OrdinalIgnoreCase);
        }

        (char lower, char upper) = (char.ToLowerInvariant(cell[0]), char.ToUpperInvariant(cell[0]));
        while (text.Length >= cell.Length)
        {
            int at = text[..^(cell.Length - 1)].IndexOfAny(lower, upper);
            if (at < 0)
            {
                return false;
            }

            if (Ascii.EqualsIgnoreCase(text.Slice(at, cell.Length), cell))
            {
                return true;
            }

            text = text[(at + 1)..];
        }

        return false;
    }

    private static string Number(Match match)
    {
        int digits = match.Value.Count(char.IsAsciiDigit);
        return digits < 7 || Date().IsMatch(match.Value) ? match.Value
            : digits is >= 13 and <= 19 && IsCard(match.Value) ? "[card]"
            : "[phone]";
    }

    // Check digit of payment cards (Luhn 1960).
    private static bool IsCard(string text)
    {
        int sum = 0;
        bool twice = false;
        for (int i = text.Length - 1; i >= 0; i--)
        {
            if (char.IsAsciiDigit(text[i]))
            {
                int d = (text[i] - '0') * (twice ? 2 : 1);
                sum += d > 9 ? d - 9 : d;
                twice = !twice;
            }
        }

        return sum % 10 == 0;
    }

    [GeneratedRegex(@"[\w.+%-]{1,64}@[\w-]{1,63}(\.[\w-]{1,63}){0,6}", RegexOptions.CultureInvariant)]
    private static partial Regex Email();

    [GeneratedRegex(@"(?<![\w])(\+|\()?\d(?:[ ().\-/]{0,2}\d){5,18}(?!\w)", RegexOptions.CultureInvariant)]
    private static partial Regex LongNumber();

    [GeneratedRegex(@"^(19|20)\d\d[-./](0?[1-9]|1[0-2])[-./]([0-2]?\d|3[01])$|^([0-2]?\d|3[01])[-./]([0-2]?\d|3[01])[-./](19|20)\d\d$", RegexOptions.CultureInvariant)]
    private static partial Regex Date();

    // A house number, up to three words that are no words of a complaint, and a word for a street.
    [GeneratedRegex(
        @"\b\d{1,5}[a-z]?,?\s{1,3}(?:(?!(?:times?|mins?|minutes?|hrs?|hours?|days?|weeks?|years?|yrs?|months?|in|a|the|of|to|and|or|no|not|wont|won't|wo|does|doesnt|doesn't|is|it|on|off|when|then)\b)[\p{L}'.-]{1,30}\s{1,3}){0,3}?"
        + @"(?:street|str|st|road|rd|avenue|ave|lane|ln|crescent|terrace|boulevard|blvd|gardens|grove|quay|quayside|mews|alley|parade|circle|wharf|yard|moorings|villas|cottages|esplanade|promenade|embankment|\p{L}{3,20}(?:walk|gate|wharf|street|croft|field|fields|grove|bridge)"
        + @"|(?<=\d[a-z]?,?\s{1,3}[\p{L}'.-]{2,30}(?:\s{1,3}[\p{L}'.-]{1,30}){0,2}\s{1,3})(?:drive|dr|close|court|ct|place|pl|square|sq|way|row|hill|park|rise|view|gate|green|bank|walk|vale|end|field|fields|mount|bridge|dock|heath|moor|common))\b\.?"
        + @"(?:,?\s{0,3}(?:flat|apt|apartment|unit|suite)\s{0,3}\w{1,10})?"
        + @"|\b[\p{L}'-]{0,40}(?:stra\u00dfe|strasse|straat|weg|gasse|platz|laan)\s{1,3}\d{1,5}[a-z]?\b|\b(?:rue|via|calle|avenida)\s{1,3}(?:[\p{L}'.-]{1,30}\s{1,3}){1,4}?\d{1,5}\b",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Street();

    [GeneratedRegex(@"\b(?:mr|mrs|ms|miss|mx|dr|herr|frau|mme|sig)\b\.?\s+\p{L}[\p{L}'-]+(?:\s+\p{Lu}[\p{L}'-]+)?", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex TitledName();

    [GeneratedRegex(@"\b((?:ask for|asked for|call|ring|phone|speak to|contact|tenant|customer|owner|cust)\s+)\p{Lu}[\p{Ll}'-]{2,}(?:\s+\p{Lu}[\p{Ll}'-]{2,})?(?!\w)", RegexOptions.CultureInvariant)]
    private static partial Regex CalledName();
}
