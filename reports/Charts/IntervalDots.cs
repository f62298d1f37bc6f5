using PartsSignal.Analysis.Statistics;
using PartsSignal.Reports.Components;

namespace PartsSignal.Reports.Charts;

/// <summary>One row of a plot of intervals.</summary>
/// <param name="Name">What it is about.</param>
/// <param name="Value">The estimate with its interval, or why there is none.</param>
/// <param name="Count">How many it rests on, in words, for example <c>48 of 412</c>.</param>
/// <param name="StandsOut">Drawn with the alert mark.</param>
/// <param name="Compare">A figure to compare with, for example the month before, or null.</param>
internal sealed record IntervalRow(string Name, Estimate Value, string Count, bool StandsOut = false, double? Compare = null);

/// <summary>Estimates with their intervals, one row each, on a common scale.</summary>
/// <param name="Text">Its words.</param>
/// <param name="AxisTitle">What the scale shows, with its unit.</param>
/// <param name="Percent">True if the values are shares, shown as percentages.</param>
/// <param name="Rows">The rows, top first.</param>
/// <param name="CompareName">What <see cref="IntervalRow.Compare"/> is, or null if no row has one.</param>
internal sealed record IntervalDots(
    ChartText Text, string AxisTitle, bool Percent, IReadOnlyList<IntervalRow> Rows, string? CompareName = null) : IBlock
{
    private const int RowHeight = 24;
    private const int LongestName = 28;

    /// <inheritdoc/>
    public Node Draw(string currency = "")
    {
        List<LegendEntry> legend = [new("estimate, 95 % interval", Palette.Main, MarkShape.Dot, Stroke.Solid)];
        if (Rows.Any(r => r.StandsOut))
        {
            legend.Add(new("stands out", Palette.Alert, MarkShape.Triangle, Stroke.Solid));
        }

        if (CompareName is not null)
        {
            legend.Add(new(CompareName, Palette.Quiet, MarkShape.Ring));
        }

        int top = Legend.Height(legend, 440) + 8;
        var frame = new ChartFrame(top + (RowHeight * Rows.Count) + 46, Left: Room(Rows.Select(r => Format.Shorten(r.Name, LongestName)), 90), Right: Room(Rows.Select(r => r.Count), 40), Top: top);
        double highest = Rows.Select(r => r.Value.Upper ?? r.Value.Value ?? 0).Append(0).Concat(Rows.Select(r => r.Compare ?? 0)).Max();
        double unit = Percent ? 100 : 1;
        Scale x = Scale.FromZero(highest * unit, AxisTitle, Format.Tick, 4);
        x = x with { Min = -0.03 * x.Max };
        var canvas = new ChartCanvas(frame, x, new Scale(-0.5, Rows.Count - 0.5, [], ""));
        foreach (Tick tick in x.Ticks)
        {
            canvas.Line(tick.At, canvas.Y.Min, tick.At, canvas.Y.Max, Palette.Rule);
        }

        for (int i = 0; i < Rows.Count; i++)
        {
            Row(canvas, Rows[i], Rows.Count - 1 - i, unit);
        }

        Legend.Draw(canvas, legend);
        return ChartSvg.Figure(canvas, Text);
    }

    private static int Room(IEnumerable<string> texts, int least) => Math.Max(least, 14 + (int)(6.4 * texts.Select(t => t.Length).DefaultIfEmpty(0).Max()));

    private static void Row(ChartCanvas canvas, IntervalRow row, int at, double unit)
    {
        canvas.Label(canvas.X.Min, at, Format.Shorten(row.Name, LongestName), TextAnchor.End, -6, 4);
        canvas.Label(canvas.X.Max, at, row.Count, TextAnchor.Start, 6, 4, Palette.Quiet);
        if (row.Value.Value is not { } value)
        {
            canvas.Label(canvas.X.Min, at, Format.Shorten(row.Value.Missing ?? "not known", 30), TextAnchor.Start, 6, 4, Palette.Quiet);
            return;
        }

        string color = row.StandsOut ? Palette.Alert : Palette.Main;
        canvas.Line((row.Value.Lower ?? value) * unit, at, (row.Value.Upper ?? value) * unit, at, color, 2);
        if (row.Compare is { } compare)
        {
            canvas.Mark(compare * unit, at, MarkShape.Ring, Palette.Quiet, 9);
        }

        canvas.Mark(value * unit, at, row.StandsOut ? MarkShape.Triangle : MarkShape.Dot, color, row.StandsOut ? 10 : 8);
    }
}
