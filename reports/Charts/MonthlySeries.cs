using System.Globalization;
using PartsSignal.Reports.Components;

namespace PartsSignal.Reports.Charts;

/// <summary>One month of a series.</summary>
/// <param name="Month">First day of the month.</param>
/// <param name="Count">What was counted.</param>
/// <param name="Expected">What earlier months lead one to expect, or null if there is no baseline yet.</param>
/// <param name="Limit">Count from which a month is an alarm, or null if there is no baseline yet.</param>
/// <param name="Alarm">True if this month raised an alarm.</param>
/// <param name="Complete">False if jobs of this month are still open, so its count will grow.</param>
internal sealed record SeriesMonth(DateOnly Month, double Count, double? Expected, double? Limit, bool Alarm, bool Complete = true);

/// <summary>Counts by month with the expected counts and the alarms.</summary>
/// <param name="Text">Its words.</param>
/// <param name="CountTitle">What is counted, with the unit.</param>
/// <param name="Months">The months, oldest first.</param>
internal sealed record MonthlySeries(ChartText Text, string CountTitle, IReadOnlyList<SeriesMonth> Months) : IBlock
{
    /// <inheritdoc/>
    public Node Draw(string currency = "")
    {
        List<LegendEntry> legend = [new("counted", Palette.Main, MarkShape.Square), new("expected", Palette.Third, null, Stroke.Solid), new("alarm limit", Palette.Quiet, null, Stroke.Dashed)];
        if (Months.Any(m => m.Alarm))
        {
            legend.Add(new("alarm", Palette.Alert, MarkShape.Triangle));
        }

        if (Months.Any(m => !m.Complete))
        {
            legend.Add(new("not complete", Palette.Main, MarkShape.HollowSquare));
        }

        double top = Months.Select(m => Math.Max(m.Count, m.Limit ?? 0)).DefaultIfEmpty(1).Max();
        int head = Legend.Height(legend, 440);
        Scale y = Scale.FromZero(top * 1.08, CountTitle, Format.Tick);
        Scale x = new(-0.7, Math.Max(Months.Count, 1) - 0.3, [.. MonthTicks()], "month of the call");
        var canvas = new ChartCanvas(new ChartFrame(230 + head, Top: 10 + head), x, y);
        for (int i = 0; i < Months.Count; i++)
        {
            Month(canvas, Months[i], i);
        }

        Line(canvas, m => m.Expected, Palette.Third, Stroke.Solid);
        Line(canvas, m => m.Limit, Palette.Quiet, Stroke.Dashed);
        Legend.Draw(canvas, legend);
        return ChartSvg.Figure(canvas, Text);
    }

    private static void Month(ChartCanvas canvas, SeriesMonth month, int at)
    {
        canvas.Bar(at, month.Count, 0.32, month.Alarm ? Palette.Alert : Palette.Main, hollow: !month.Complete);
        if (month.Alarm)
        {
            canvas.Mark(at, month.Count + (canvas.Y.Max * 0.035), MarkShape.Triangle, Palette.Alert, 9);
        }
    }

    private void Line(ChartCanvas canvas, Func<SeriesMonth, double?> value, string color, Stroke stroke)
    {
        var points = Months.Select((m, i) => (At: (double)i, Value: value(m))).Where(p => p.Value is not null).ToArray();
        if (points.Length > 1)
        {
            canvas.Path([.. points.Select(p => p.At)], [.. points.Select(p => p.Value!.Value)], color, stroke, 1.5f);
        }
    }

    private IEnumerable<Tick> MonthTicks()
    {
        int every = Months.Count <= 8 ? 1 : Months.Count <= 18 ? 3 : 6;
        for (int i = 0; i < Months.Count; i++)
        {
            if ((Months.Count - 1 - i) % every == 0)
            {
                yield return new Tick(i, Months[i].Month.ToString("MMM yy", CultureInfo.InvariantCulture));
            }
        }
    }
}
