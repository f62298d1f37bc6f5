using System.Globalization;

namespace PartsSignal.Pipeline.Cleaning;

/// <summary>Reads the time of day behind a date: <c>14:05</c>, <c>2:05:30 pm</c>, <c>14:05:30.123Z</c>, <c>14:05+02:00</c>.</summary>
internal static class ClockText
{
    /// <summary>Reads a time and its zone.</summary>
    /// <param name="text">Text after the date; a leading T or comma is allowed.</param>
    /// <param name="clock">Time since midnight.</param>
    /// <param name="zone">Distance from UTC, or null if none is named.</param>
    public static bool TryRead(ReadOnlySpan<char> text, out TimeSpan clock, out TimeSpan? zone)
    {
        clock = default;
        zone = null;
        text = text.Trim(" Tt,");
        if (text.EndsWith("Z", StringComparison.OrdinalIgnoreCase) || text.EndsWith("UTC", StringComparison.OrdinalIgnoreCase) || text.EndsWith("GMT", StringComparison.OrdinalIgnoreCase))
        {
            zone = TimeSpan.Zero;
            text = text.TrimEnd("ZzUTCutcGMgm ");
        }
        else if (text.LastIndexOfAny('+', '-') is int at && at > 0)
        {
            if (!TryZone(text[at..], out TimeSpan shift))
            {
                return false;
            }

            zone = shift;
            text = text[..at].TrimEnd();
        }

        int half = text.EndsWith("pm", StringComparison.OrdinalIgnoreCase) || text.EndsWith("p.m.", StringComparison.OrdinalIgnoreCase) ? 12
            : text.EndsWith("am", StringComparison.OrdinalIgnoreCase) || text.EndsWith("a.m.", StringComparison.OrdinalIgnoreCase) ? 0 : -1;
        text = half >= 0 ? text.TrimEnd("apmAPM. ") : text;
        if (text.Length is > 0 and <= 2 && half >= 0 && int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out int bare))
        {
            clock = TimeSpan.FromHours((bare % 12) + half);
            return bare is >= 1 and <= 12;
        }

        int colon = text.IndexOf(':');
        if (colon is < 1 or > 2 || !TimeOnly.TryParse(text, CultureInfo.InvariantCulture, out TimeOnly time))
        {
            return false;
        }

        if (half >= 0 && time.Hour is 0 or > 12 && half >= 0)
        {
            return false;
        }

        clock = half < 0 ? time.ToTimeSpan() : time.ToTimeSpan() - TimeSpan.FromHours(time.Hour) + TimeSpan.FromHours((time.Hour % 12) + half);
        return true;
    }

    private static bool TryZone(ReadOnlySpan<char> text, out TimeSpan shift)
    {
        shift = default;
        ReadOnlySpan<char> digits = text[1..];
        int colon = digits.IndexOf(':');
        ReadOnlySpan<char> hours = colon >= 0 ? digits[..colon] : digits.Length == 4 ? digits[..2] : digits;
        ReadOnlySpan<char> minutes = colon >= 0 ? digits[(colon + 1)..] : digits.Length == 4 ? digits[2..] : "0";
        if (!int.TryParse(hours, NumberStyles.None, CultureInfo.InvariantCulture, out int h) || !int.TryParse(minutes, NumberStyles.None, CultureInfo.InvariantCulture, out int m) || h > 14 || m > 59)
        {
            return false;
        }

        shift = new TimeSpan(h, m, 0) * (text[0] == '-' ? -1 : 1);
        return true;
    }
}
