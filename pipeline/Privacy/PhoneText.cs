using PartsSignal.Pipeline.Words;
using PhoneNumbers;

namespace PartsSignal.Pipeline.Privacy;

/// <summary>Tells a phone number from a code by the numbering plans of all countries (libphonenumber).</summary>
internal static class PhoneText
{
    private const int FewestGrouped = 7;
    private const int FewestSingle = 9;
    private const int FewestPlain = 4;
    private const int Most = 15;
    private const int LongestShape = 40;

    private static readonly Lazy<string[]> Regions = new(() => [.. PhoneNumberUtil.GetInstance().GetSupportedRegions().Order(StringComparer.Ordinal)]);

    /// <summary>True for a cell that is a phone number and no more.</summary>
    /// <param name="cell">The cell.</param>
    /// <param name="bareToo">True where digits without a sign, a leading zero or a blank may be one: where enough rows show what the column's numbers look like.</param>
    public static bool Is(ReadOnlySpan<char> cell, bool bareToo)
    {
        Span<char> digits = stackalloc char[Most];
        int n = 0;
        bool sign = false, parted = false, opens = false;
        foreach (char c in cell)
        {
            int digit = TextFold.Digit(c);
            if (digit >= 0)
            {
                if (n == Most)
                {
                    return false;
                }

                digits[n++] = (char)('0' + digit);
            }
            else if (TextFold.IsWordPart(c) && (char.IsLetter(c) || char.IsSurrogate(c)))
            {
                return false;
            }
            else
            {
                sign |= c is '+' or '\uff0b';
                opens |= n == 0 && c is '+' or '\uff0b';
                parted |= c is not ('-' or '.' or '/');
            }
        }

        // No code begins with a plus, whether or not a country has such numbers.
        bool enough = sign || parted || IsLocal(cell, n) || IsNorthAmerican(cell, digits[..n]) ? n >= FewestGrouped : n >= FewestSingle && (digits[0] == '0' || bareToo);
        return (opens && n >= FewestSingle) || (enough && IsValid(digits[..n].ToString(), sign));
    }

    /// <summary>
    /// True for a phone number that letters hide: behind a word such as <c>tel</c>, with an x between its groups, or with
    /// the letters l and O for digits.
    /// </summary>
    /// <param name="text">One run of letters and digits.</param>
    public static bool IsDisguised(ReadOnlySpan<char> text)
    {
        if (text.Length is < FewestSingle or > LongestShape)
        {
            return false;
        }

        Span<char> digits = stackalloc char[LongestShape];
        int first = 0;
        while (first < text.Length && char.IsLetter(text[first]))
        {
            first++;
        }

        bool called = first > 1 && PersonalWords.Call.Contains(WordList.Hash(TextFold.Fold(text[..first])));
        int n = 0, alike = 0, joints = 0;
        for (int i = called ? first : 0; i < text.Length; i++)
        {
            char c = text[i];
            if (char.IsAsciiDigit(c))
            {
                digits[n++] = c;
            }
            else if (IsLikeDigit(c))
            {
                digits[n++] = c is 'o' or 'O' ? '0' : '1';
                alike++;
            }
            else if (c is 'x' or 'X' && i > 0 && i + 1 < text.Length)
            {
                joints++;
            }
            else
            {
                return false;
            }
        }

        bool hidden = called || alike > 0 || joints > 1 || (joints == 1 && digits[0] == '0' && n > FewestSingle);
        return hidden && n is >= FewestSingle and <= Most && n - alike >= FewestPlain && IsValid(digits[..n].ToString(), sign: false);
    }

    private static bool IsLikeDigit(char c) => c is 'l' or 'I' or 'o' or 'O';

    /// <summary>Shape of a cell with a long number: its digits as nines, its letters as A, what parts them as it stands, or null for a cell with few digits.</summary>
    public static string? Shape(ReadOnlySpan<char> cell)
    {
        cell = cell.Trim();
        if (cell.Length > LongestShape)
        {
            return null;
        }

        Span<char> shape = stackalloc char[LongestShape];
        int digits = 0;
        for (int i = 0; i < cell.Length; i++)
        {
            bool digit = TextFold.Digit(cell[i]) >= 0;
            digits += digit ? 1 : 0;
            shape[i] = digit ? '9' : char.IsLetter(cell[i]) ? 'A' : cell[i];
        }

        return digits < FewestGrouped ? null : shape[..cell.Length].ToString();
    }

    // 555-0142, 5123.4945: two groups, the second of four digits.
    private static bool IsLocal(ReadOnlySpan<char> cell, int digits)
    {
        int mark = cell.IndexOfAny('-', '.');
        return digits is 7 or 8 && mark == digits - 4 && cell.Length == digits + 1;
    }

    // 212-555-0142, 212-5550142: the area and the exchange begin with neither 0 nor 1.
    private static bool IsNorthAmerican(ReadOnlySpan<char> cell, ReadOnlySpan<char> digits) =>
        digits.Length == 10 && digits[0] is not ('0' or '1') && digits[3] is not ('0' or '1') && cell.IndexOfAny('-', '.') == 3
        && (cell.Length == 11 || (cell.Length == 12 && cell[7] == cell[3]));

    private static bool IsValid(string digits, bool sign)
    {
        var phones = PhoneNumberUtil.GetInstance();
        if (sign || digits.StartsWith("00", StringComparison.Ordinal))
        {
            return Parses(phones, "+" + digits.TrimStart('0'), null);
        }

        foreach (string region in Regions.Value)
        {
            if (Parses(phones, digits, region))
            {
                return true;
            }
        }

        return false;
    }

    private static bool Parses(PhoneNumberUtil phones, string number, string? region)
    {
        try
        {
            return phones.IsValidNumber(phones.Parse(number, region));
        }
        catch (NumberParseException)
        {
            return false;
        }
    }
}
