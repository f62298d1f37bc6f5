using System.Globalization;
using System.Text;
using PartsSignal.SampleShop.Chance;

namespace PartsSignal.SampleShop.Dialects;

/// <summary>Fills a shape such as <c>A99-YY</c>: A is a letter, 9 a digit, YYYY, YY, MM and WW come from a day; anything else stands as it is.</summary>
internal static class NumberShape
{
    private const string Letters = "ABCDEFGHJKLMNPRSTUVWXZ";

    public static string Fill(string shape, Dice dice, int day = 0)
    {
        var text = new StringBuilder(shape.Length);
        DateOnly date = DateOnly.FromDayNumber(day);
        for (int i = 0; i < shape.Length; i++)
        {
            ReadOnlySpan<char> rest = shape.AsSpan(i);
            if (rest.StartsWith("YYYY"))
            {
                text.Append(date.Year.ToString("0000", CultureInfo.InvariantCulture));
                i += 3;
            }
            else if (rest.StartsWith("YY") || rest.StartsWith("MM") || rest.StartsWith("WW"))
            {
                int value = shape[i] == 'Y' ? date.Year % 100 : shape[i] == 'M' ? date.Month : ((date.DayOfYear - 1) / 7) + 1;
                text.Append(value.ToString("00", CultureInfo.InvariantCulture));
                i++;
            }
            else
            {
                text.Append(shape[i] switch
                {
                    'A' => Letters[dice.Below(Letters.Length)],
                    '9' => (char)('0' + (text.Length == 0 ? dice.Between(1, 9) : dice.Below(10))),
                    char other => other,
                });
            }
        }

        return text.ToString();
    }

    /// <summary>A filled shape that is not among those already given out.</summary>
    public static string FillNew(string shape, Dice dice, HashSet<string> taken, int day = 0)
    {
        string text = Fill(shape, dice, day);
        for (int attempt = 0; !taken.Add(text); attempt++)
        {
            text = attempt < 20 ? Fill(shape, dice, day) : text + dice.Below(10).ToString(CultureInfo.InvariantCulture);
        }

        return text;
    }
}
