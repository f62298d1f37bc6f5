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
/// <param name="LastDay">Last day the files reach, or null if unknown.</param>
/// <param name="Months">The months, newest first.</param>
internal sealed record MonthsView(DateOnly? LastDay, IReadOnlyList<ReportMonth> Months) : IFigures
{
    /// <summary>Why the newest month has no report, or null if it has one or the files say nothing.</summary>
    public string? NewestIsMissing =>
        LastDay is { } day && Months.Count > 0 && Months[0] is { IsOver: false, HasReport: false } newest
            ? $"There is no report of {PageText.Month(newest.First)} yet, because your files end on {PageText.Day(day)}, before the month was over."
            : null;

    /// <summary>The list as the last update left it; empty before the first.</summary>
    /// <param name="shop">The shop.</param>
    /// <param name="lastDay">Last day the files reach, or null if unknown.</param>
    public static MonthsView Of(ShopFolder shop, DateOnly? lastDay)
    {
        DateOnly? over = lastDay is { } day ? ReportMonths.Last(day) : null;
        return new MonthsView(lastDay, [.. MonthFigures.All(shop.Output.Results).Select(m => Month(shop, m, over)).Where(m => lastDay is null || m.First <= lastDay).OrderByDescending(m => m.First)]);
    }

    private static ReportMonth Month(ShopFolder shop, MonthFigures figures, DateOnly? over)
    {
        string page = Path.Combine(shop.Output.Reports, figures.Month, "index.html"), made = MonthFigures.PathIn(shop.Output.Results);
        bool written = File.Exists(page);
        return new ReportMonth(figures, written, written && File.GetLastWriteTimeUtc(page) < File.GetLastWriteTimeUtc(made), over is null || string.CompareOrdinal(figures.Month, $"{over:yyyy-MM}") <= 0);
    }
}
