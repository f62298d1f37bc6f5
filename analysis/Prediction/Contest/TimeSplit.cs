namespace PartsSignal.Analysis.Prediction.Contest;

/// <summary>Days from <paramref name="From"/> up to, not including, <paramref name="To"/>.</summary>
public sealed record DateRange(DateOnly From, DateOnly To)
{
    /// <summary>True for a day inside.</summary>
    public bool Holds(DateOnly day) => day >= From && day < To;
}

/// <summary>
/// Which days serve what: learn, calibrate, choose, test, always in this order. Short histories get shorter blocks, at
/// most a fifth of the months for the test and a sixth for the choice.
/// </summary>
/// <param name="Calibration">Days the contest's temperatures are found on.</param>
/// <param name="Validation">Days the choice is made on.</param>
/// <param name="Test">Days whose figures are published.</param>
/// <param name="Folds">Cut-offs of the walk: two folds before the test, then the test itself.</param>
public sealed record TimeSplit(DateRange Calibration, DateRange Validation, DateRange Test, IReadOnlyList<DateRange> Folds)
{
    /// <summary>Makes a timetable for jobs ordered by day, or null if there are fewer than six months, or none.</summary>
    public static TimeSplit? For(IReadOnlyList<ClosedCall> calls, ContestOptions options)
    {
        if (calls.Count == 0)
        {
            return null;
        }

        DateOnly first = calls[0].OpenedOn, end = calls[^1].OpenedOn.AddDays(1);
        int months = (end.Year - first.Year) * 12 + end.Month - first.Month;
        if (months < 6)
        {
            return null;
        }

        int test = Math.Clamp(months / 5, 1, options.TestMonths);
        int validation = Math.Clamp(months / 6, 1, options.ValidationMonths);
        int calibration = Math.Clamp(months / 8, 1, options.CalibrationMonths);
        int fold = Math.Clamp(test / 3, 1, options.FoldMonths);
        DateOnly testFrom = end.AddMonths(-test), validationFrom = testFrom.AddMonths(-validation);
        var folds = new List<DateRange>();
        for (DateOnly from = testFrom.AddMonths(-2 * fold); from < end; from = from.AddMonths(fold))
        {
            DateOnly to = from.AddMonths(fold);
            folds.Add(new DateRange(from, to > end ? end : to));
        }

        return new TimeSplit(
            new DateRange(validationFrom.AddMonths(-calibration), validationFrom),
            new DateRange(validationFrom, testFrom),
            new DateRange(testFrom, end),
            folds);
    }

    /// <summary>
    /// Jobs one may learn from at a cut-off: their answer was known before the judged days begin, and their unit is not
    /// among those judged, so that no unit ever stands on both sides.
    /// </summary>
    public static IReadOnlyList<ClosedCall> Known(IReadOnlyList<ClosedCall> calls, DateRange judged)
    {
        HashSet<string> units = Within(calls, judged).Select(c => c.UnitId).OfType<string>().ToHashSet(StringComparer.Ordinal);
        return [.. calls.Where(c => c.ClosedOn < judged.From && c.OpenedOn < judged.From && (c.UnitId is null || !units.Contains(c.UnitId)))];
    }

    /// <summary>Jobs whose call came within the days.</summary>
    public static IReadOnlyList<ClosedCall> Within(IReadOnlyList<ClosedCall> calls, DateRange span) =>
        [.. calls.Where(c => span.Holds(c.OpenedOn))];
}
