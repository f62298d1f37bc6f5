using PartsSignal.Reports.Components;

namespace PartsSignal.Reports.Charts;

/// <summary>One point of a curve.</summary>
/// <param name="X">Position on the horizontal axis, in its unit.</param>
/// <param name="Value">Height, in the vertical axis' unit.</param>
/// <param name="Lower">Lower end of its interval, or null.</param>
/// <param name="Upper">Upper end of its interval, or null.</param>
internal sealed record CurvePoint(double X, double Value, double? Lower = null, double? Upper = null);

/// <summary>One curve with its name.</summary>
/// <param name="Name">Shown in the legend.</param>
/// <param name="Points">In order of X; a curve of fewer than two is not drawn.</param>
/// <param name="Steps">True if it keeps its height until the next point, as an estimate that jumps at events does.</param>
internal sealed record Curve(string Name, IReadOnlyList<CurvePoint> Points, bool Steps = false);

/// <summary>Up to three curves, with bands where they have intervals.</summary>
/// <param name="Text">Its words.</param>
/// <param name="XTitle">Horizontal axis, with its unit.</param>
/// <param name="YTitle">Vertical axis, with its unit.</param>
/// <param name="Lines">The curves; the first is drawn strongest.</param>
/// <param name="MarkAt">Position of a vertical line, for example today's budget, or null.</param>
/// <param name="MarkName">What that line is.</param>
/// <param name="YTop">Top of the vertical axis, or null to take it from the data.</param>
internal sealed record Curves(
    ChartText Text, string XTitle, string YTitle, IReadOnlyList<Curve> Lines,
    double? MarkAt = null, string? MarkName = null, double? YTop = null) : IBlock
{
    private static readonly (string Color, Stroke Stroke)[] Styles =
        [(Palette.Main, Stroke.Solid), (Palette.Alert, Stroke.Dashed), (Palette.Third, Stroke.Dotted)];

    /// <inheritdoc/>
    public Node Draw(string currency = "")
    {
        List<LegendEntry> legend = [.. Lines.Select((l, i) => new LegendEntry(l.Name, Styles[i % 3].Color, null, Styles[i % 3].Stroke))];
        if (MarkAt is not null)
        {
            legend.Add(new(MarkName ?? "mark", Palette.Quiet, null, Stroke.Dashed));
        }

        CurvePoint[] all = [.. Lines.SelectMany(l => l.Points)];
        double right = all.Select(p => p.X).Append(MarkAt ?? 0).DefaultIfEmpty(1).Max();
        double top = YTop ?? all.Select(p => p.Upper ?? p.Value).DefaultIfEmpty(1).Max();
        Scale x = Scale.FromZero(right, XTitle, Format.Tick);
        Scale y = Scale.FromZero(top, YTitle, Format.Tick);
        int head = Legend.Height(legend, 440);
        var canvas = new ChartCanvas(new ChartFrame(250 + head, Top: 10 + head), x, y);
        if (MarkAt is { } mark)
        {
            canvas.Line(mark, y.Min, mark, y.Max, Palette.Quiet, 1.5f, Stroke.Dashed);
        }

        for (int i = 0; i < Lines.Count; i++)
        {
            DrawCurve(canvas, Lines[i], Styles[i % 3].Color, Styles[i % 3].Stroke);
        }

        Legend.Draw(canvas, legend);
        return ChartSvg.Figure(canvas, Text);
    }

    private static void DrawCurve(ChartCanvas canvas, Curve curve, string color, Stroke stroke)
    {
        if (curve.Points.Count < 2)
        {
            return;
        }

        IReadOnlyList<CurvePoint> points = curve.Steps ? Stepped(curve.Points) : curve.Points;
        CurvePoint[] banded = [.. points.Where(p => p.Lower is not null && p.Upper is not null)];
        if (banded.Length > 1)
        {
            canvas.Band([.. banded.Select(p => p.X)], [.. banded.Select(p => p.Lower!.Value)], [.. banded.Select(p => p.Upper!.Value)], color);
        }

        canvas.Path([.. points.Select(p => p.X)], [.. points.Select(p => p.Value)], color, stroke);
    }

    private static List<CurvePoint> Stepped(IReadOnlyList<CurvePoint> points)
    {
        var steps = new List<CurvePoint> { points[0] };
        for (int i = 1; i < points.Count; i++)
        {
            steps.Add(points[i - 1] with { X = points[i].X });
            steps.Add(points[i]);
        }

        return steps;
    }
}
