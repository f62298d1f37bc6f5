using System.Globalization;

namespace PartsSignal.Analysis.CrossReference;

/// <summary>First and last day on which an appliance may have been built, both inside.</summary>
/// <param name="From">First possible day.</param>
/// <param name="To">Last possible day, not before <paramref name="From"/>.</param>
public sealed record BuildInterval(DateOnly From, DateOnly To)
{
    /// <summary>The day halfway, the earlier of two.</summary>
    public DateOnly Middle => From.AddDays((To.DayNumber - From.DayNumber) / 2);

    /// <summary>A whole calendar year.</summary>
    public static BuildInterval Year(int year) => new(new DateOnly(year, 1, 1), new DateOnly(year, 12, 31));

    /// <summary>A whole calendar month.</summary>
    public static BuildInterval Month(int year, int month)
    {
        var first = new DateOnly(year, month, 1);
        return new BuildInterval(first, first.AddMonths(1).AddDays(-1));
    }

    /// <summary>Monday to Sunday of an ISO 8601 week; null where the year has no such week (0, 54 and more, 53 of a short year).</summary>
    public static BuildInterval? IsoWeek(int year, int week)
    {
        if (week < 1 || week > ISOWeek.GetWeeksInYear(year))
        {
            return null;
        }

        var monday = DateOnly.FromDateTime(ISOWeek.ToDateTime(year, week, DayOfWeek.Monday));
        return new BuildInterval(monday, monday.AddDays(6));
    }

    /// <summary>
    /// Seven days of a count that begins on 1 January. Makers who count so either go on to a week 53 or let week 52 run to
    /// the end of the year, so week 52 ends on 31 December and week 53 is the days after 52 times 7. Null for 0, 54 and more.
    /// </summary>
    public static BuildInterval? WeekSinceJanuary(int year, int week)
    {
        if (week is < 1 or > 53)
        {
            return null;
        }

        DateOnly first = new DateOnly(year, 1, 1).AddDays(7 * (week - 1));
        return new BuildInterval(first, week >= 52 ? new DateOnly(year, 12, 31) : first.AddDays(6));
    }

    /// <summary>
    /// The days of a week whether it is counted as <see cref="IsoWeek"/> or as <see cref="WeekSinceJanuary"/>; null where
    /// neither has such a week.
    /// </summary>
    public static BuildInterval? EitherWeek(int year, int week) => (IsoWeek(year, week), WeekSinceJanuary(year, week)) switch
    {
        ({ } iso, { } january) => new BuildInterval(iso.From < january.From ? iso.From : january.From, iso.To > january.To ? iso.To : january.To),
        var (iso, january) => iso ?? january,
    };

    /// <summary>
    /// The days of a calendar year whose ISO 8601 week has this number. Makers who write such a week beside the calendar year
    /// give days around New Year the number of the other year's week, so there may be two intervals. Empty for 0, 54 and more.
    /// </summary>
    public static IReadOnlyList<BuildInterval> CalendarWeek(int year, int week)
    {
        var found = new List<BuildInterval>();
        for (var day = new DateOnly(year, 1, 1); day.Year == year && week is >= 1 and <= 53; day = day.AddDays(1))
        {
            if (ISOWeek.GetWeekOfYear(day.ToDateTime(default)) == week)
            {
                int last = found.Count - 1;
                if (last >= 0 && found[last].To.AddDays(1) == day)
                {
                    found[last] = found[last] with { To = day };
                }
                else
                {
                    found.Add(new BuildInterval(day, day));
                }
            }
        }

        return found;
    }

    /// <summary>Several intervals as one text, <c>from/to;from/to</c> with ISO days; null for none.</summary>
    public static string? Write(IReadOnlyList<BuildInterval> intervals) =>
        intervals.Count == 0 ? null : string.Join(';', intervals.Select(i => i.ToString()));

    /// <summary>Reads what <see cref="Write"/> wrote.</summary>
    public static IReadOnlyList<BuildInterval> Read(string? text) =>
        string.IsNullOrEmpty(text) ? [] : [.. text.Split(';').Select(One)];

    /// <inheritdoc/>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{From:yyyy-MM-dd}/{To:yyyy-MM-dd}");

    private static BuildInterval One(string text)
    {
        string[] ends = text.Split('/');
        return new BuildInterval(
            DateOnly.ParseExact(ends[0], "yyyy-MM-dd", CultureInfo.InvariantCulture),
            DateOnly.ParseExact(ends[1], "yyyy-MM-dd", CultureInfo.InvariantCulture));
    }
}
