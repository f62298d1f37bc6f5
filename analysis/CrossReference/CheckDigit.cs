namespace PartsSignal.Analysis.CrossReference;

/// <summary>The last digit of article numbers on packages (GS1: EAN, UPC).</summary>
public static class CheckDigit
{
    /// <summary>Modulo-10 digit with weights 3, 1, 3 ... from the right; null when a character is no digit or there is none.</summary>
    /// <param name="body">The number without its check digit.</param>
    public static int? Gs1(string body)
    {
        int sum = 0;
        for (int i = 0; i < body.Length; i++)
        {
            char c = body[body.Length - 1 - i];
            if (!char.IsAsciiDigit(c))
            {
                return null;
            }

            sum += (c - '0') * (i % 2 == 0 ? 3 : 1);
        }

        return body.Length == 0 ? null : (10 - sum % 10) % 10;
    }

    /// <summary>True for a number of 8, 12, 13 or 14 digits whose last digit is right: an article number, hardly a part number.</summary>
    public static bool IsArticleNumber(string number) =>
        number.Length is 8 or 12 or 13 or 14 && Gs1(number[..^1]) is { } digit && number[^1] - '0' == digit;
}
