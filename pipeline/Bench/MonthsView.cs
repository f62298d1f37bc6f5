using System.Globalization;
using PartsSignal.Pipeline.Reporting;

namespace PartsSignal.Pipeline.Bench;

/// <summary>One month on the list of reports.</summary>
/// <param name="Figures">What happened in it.</param>
/// <param name="HasReport">True if its report was written.</param>
/// <param name="IsOlder">True if that report was written from the figures of an earlier update.</param>
/// <param name="IsOver">True if the files reach the month's last day.</param>
internal sealed record ReportMonth(MonthFigures Figures, bool HasReport, bool IsOlder, bool IsOver)
{
    /// <summary>The month, <c>2026-03</c>.</summary>
    public string Name => Figures.Month;

    /// <summary>Its first day.</summary>
    public DateOnly First => DateOnly.ParseExact(Name + "-01", "yyyy-MM-dd", CultureInfo.InvariantCulture);
}

/// <summary>All months of the last update and their reports.</summary>
/// <param name="DataUpTo">Last day the files reach, or null if unknown.</param>
/// <param name="Months">The months, newest first.</param>
internal sealed record MonthsView(DateOnly? DataUpTo, IReadOnlyList<ReportMonth> Months)
{
    /// <summary>Why the newest month has no report, or null if it has one or the files say nothing.</summary>
    public string? NewestIsMissing =>
        DataUpTo is { } day && Months.Count > 0 && Months[0] is { IsOver: false, HasReport: false } newest
            ? $"There is no report of {PageText.Month(newest.First)} yet, because your files end on {PageText.Day(day)}, before the month was over."
            : null;

    /// <summary>The list as the last update left it; empty before the first.</summary>
    public static MonthsView Of(ShopFolder shop)
    {
        IReadOnlyList<MonthFigures> months = MonthFigures.All(shop.Output.Results);
        DateOnly? upTo = months.Count == 0 ? null : DataAge.LastDay(shop);
        DateOnly? last = upTo is { } day ? ReportMonths.Last(day) : null;
        return new MonthsView(upTo, [.. months.Select(m => Month(shop, m, last)).Where(m => upTo is null || m.First <= upTo).OrderByDescending(m => m.First)]);
    }

    private static ReportMonth Month(ShopFolder shop, MonthFigures figures, DateOnly? last)
    {
        string page = Path.Combine(shop.Output.Reports, figures.Month, "index.html"), made = Path.Combine(shop.Output.Results, "month_figures.csv");
        bool written = File.Exists(page);
        return new ReportMonth(figures, written, written && File.GetLastWriteTimeUtc(page) < File.GetLastWriteTimeUtc(made), last is null || string.CompareOrdinal(figures.Month, $"{last:yyyy-MM}") <= 0);
    }
}
