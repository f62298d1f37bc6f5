using System.Globalization;

namespace PartsSignal.Analysis.CrossReference;

/// <summary>Shows a dated serial beside what its code means, with everything but the code masked.</summary>
internal static class DateCodeExample
{
    // With fewer masked characters the serial could be guessed, so the code is masked as well.
    private const int FewestMasked = 3;
    private const char Mask = '*';

    /// <summary>One sentence fragment, such as <c>KC****** means 2010-03-01 to 2010-03-31; in use since 2010-05-02</c>.</summary>
    /// <param name="code">The code.</param>
    /// <param name="told">The serial and what is known of its date.</param>
    /// <param name="from">First year that the code may mean.</param>
    /// <param name="to">Last such year.</param>
    public static string Write(DateCode code, DateEvidence told, int from, int to)
    {
        DaySpan[] days = [.. code.Read(told.Serial, from, to) ?? []];
        string meaning = days.Length == 0 ? "names no date" : "means " + string.Join(" or ", days.Where(d => told.Fits(d)).DefaultIfEmpty(days[^1]).Select(Days));
        return $"{Masked(code, told.Serial)} {meaning}; {told.Description}";
    }

    private static string Masked(DateCode code, string serial)
    {
        char[] shown = new char[serial.Length];
        Array.Fill(shown, Mask);
        foreach (int at in code.Places)
        {
            shown[at] = serial[at];
        }

        return shown.Count(c => c == Mask) < FewestMasked ? new string(Mask, serial.Length) : new string(shown);
    }

    private static string Days(DaySpan days) =>
        string.Create(CultureInfo.InvariantCulture, $"{DateOnly.FromDayNumber(days.From):yyyy-MM-dd} to {DateOnly.FromDayNumber(days.To):yyyy-MM-dd}");
}
