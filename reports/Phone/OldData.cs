using System.Globalization;
using PartsSignal.Reports.Components;

namespace PartsSignal.Reports.Phone;

/// <summary>Tells when data ends so long ago that figures drawn from it may mislead.</summary>
public static class OldData
{
    /// <summary>Days up to which data is taken as it is; the phone page has the same limit.</summary>
    public const int MostDays = 45;

    /// <summary>What to tell, or null when the data is not old or its last day is unknown.</summary>
    /// <param name="lastDay">Last day covered by the data.</param>
    /// <param name="today">The day on which somebody reads it.</param>
    /// <param name="whatToDo">What the reader can do, a sentence.</param>
    public static string? Sentence(DateOnly? lastDay, DateOnly today, string whatToDo) =>
        lastDay is { } last && today.DayNumber - last.DayNumber is > MostDays and var days
            ? $"The files end on {Format.Day(last)}, {days.ToString(CultureInfo.InvariantCulture)} days ago. Odds, prices and van contents may have changed. {whatToDo}"
            : null;
}
