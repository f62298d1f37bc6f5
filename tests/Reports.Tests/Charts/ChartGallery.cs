using PartsSignal.Analysis.Statistics;
using PartsSignal.Reports.Charts;
using PartsSignal.Reports.Components;

namespace PartsSignal.Reports.Tests.Charts;

/// <summary>One plot of every kind over invented figures, awkward ones included.</summary>
internal static class ChartGallery
{
    public const string Markup = "<script>window.ran=1</script>";

    public static IReadOnlyList<Node> All() =>
        [Dots().Draw(), Bands().Draw(), Ages().Draw(), Series().Draw(), Budget().Draw(), Calibration().Draw()];

    public static string PageText() => Page.Render("Gallery", new Element("main", new Element("h1", "Plots"), Tag.Div([.. All()]).Class("figures")), StyleSheet.Report);

    public static IntervalDots Dots() => new(
        Words("dots", "Share of calls by component"), "share of calls, %", Percent: true,
        [
            new("drain pump", Estimate.From(0.182, 0.151, 0.218), "96 of 527", StandsOut: true, Compare: 0.12),
            new("inlet valve", Estimate.From(0.121, 0.096, 0.151), "64 of 527", Compare: 0.118),
            new("control board", Estimate.From(0.083, 0.062, 0.11), "44 of 527", Compare: 0.09),
            new(Markup, Estimate.From(0.01, 0.001, 0.03), "5 of 527"),
            new("an awfully long component name", Estimate.None("too few: 2 jobs"), "2 of 527"),
        ],
        CompareName: "month before");

    public static BandRates Bands() => new(
        Words("bands", "Drain pump failures by age"), "age of the appliance, years", "failures per 100 unit-years",
        [
            new("0-2", Estimate.From(0, 0, 1.9), 0), new("2-4", Estimate.From(1.2, 0.4, 2.8), 5), new("4-6", Estimate.From(3.1, 1.9, 4.9), 19),
            new("6-8", Estimate.From(5.5, 3.6, 8.0), 27), new("8-10", Estimate.From(7.2, 4.3, 11.3), 19), new("10-13", Estimate.From(9.4, 4.3, 17.8), 9),
            new("13+", Estimate.None("no unit-years"), 0),
        ]);

    public static Curves Ages() => new(
        Words("ages", "Share still without a drain pump failure"), "age, years", "share without failure, %",
        [
            new("family K41", [.. Enumerable.Range(0, 13).Select(i => Point(i, 9.5))], Steps: true),
            new("all families", [.. Enumerable.Range(0, 13).Select(i => Point(i, 13))]),
        ],
        YTop: 100);

    public static MonthlySeries Series() => new(
        Words("series", "Inlet valve calls of family K41"), "jobs per month",
        [.. Enumerable.Range(0, 30).Select(i => new SeriesMonth(
            new DateOnly(2022, 1, 1).AddMonths(i), i < 24 ? 2 + (i % 3) : 6 + (i % 4), i < 6 ? null : 3.1, i < 6 ? null : 8, i is 25 or 27, i < 28))]);

    public static Curves Budget() => new(
        Words("budget", "First-visit completion against money on the van"), "money on the van, EUR", "jobs finished at first visit, %",
        [
            new("plan", [new(0, 31), new(250, 55), new(500, 66), new(1000, 75), new(1500, 79.5), new(2000, 82)]),
            new("most used parts first", [new(0, 31), new(250, 44), new(500, 57), new(1000, 68), new(1500, 74), new(2000, 78)]),
            new("best possible with hindsight", [new(0, 31), new(250, 61), new(500, 72), new(1000, 81), new(1500, 85), new(2000, 88)]),
        ],
        MarkAt: 1500, MarkName: "budget", YTop: 100);

    public static CalibrationPlot Calibration() => new(
        Words("calibration", "Odds stated and what came true"),
        [.. Enumerable.Range(0, 9).Select(i => new CalibrationBin(0.05 + (0.1 * i), Estimate.From(0.06 + (0.095 * i), Math.Max(0, (0.095 * i) - 0.02), 0.14 + (0.095 * i)), 200 - (20 * i)))]);

    private static CurvePoint Point(int age, double scale)
    {
        double s = Math.Exp(-Math.Pow(age / scale, 2.2)) * 100;
        return new CurvePoint(age, s, Math.Max(0, s - (age * 1.2)), Math.Min(100, s + (age * 0.8)));
    }

    private static ChartText Words(string key, string title) => new(
        key, title, "What to conclude stands here.", "527 closed jobs, January 2022 to June 2024.", $"{title}, in words. {Markup}");
}
