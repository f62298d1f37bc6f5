using ScottPlot;

namespace PartsSignal.Reports.Charts;

/// <summary>
/// Marks drawn with ScottPlot on a fixed frame. ScottPlot is given no text at all: labels measured with the fonts of one
/// machine would move on another and vanish where there is none, so <see cref="ChartSvg"/> writes them as SVG text.
/// </summary>
internal sealed class ChartCanvas
{
    private readonly Plot _plot = new();

    public ChartCanvas(ChartFrame frame, Scale x, Scale y)
    {
        (Frame, X, Y) = (frame, x, y);
        _plot.FigureBackground.Color = Colors.Transparent;
        _plot.DataBackground.Color = Colors.Transparent;
        _plot.Layout.Fixed(new PixelPadding(frame.Left, frame.Right, frame.Bottom, frame.Top));
        _plot.Axes.SetLimits(x.Min, x.Max, y.Min, y.Max);
        _plot.Axes.Frameless(true);
        _plot.HideLegend();
        _plot.HideGrid();
    }

    public ChartFrame Frame { get; }

    public Scale X { get; }

    public Scale Y { get; }

    public List<ChartLabel> Labels { get; } = [];

    public List<LegendSample> Samples { get; } = [];

    public void Line(double x1, double y1, double x2, double y2, string ink, float width = 1, Stroke stroke = Stroke.Solid)
    {
        var line = _plot.Add.Line(x1, y1, x2, y2);
        line.Color = Color.FromHex(ink);
        line.LineWidth = width;
        line.LinePattern = Pattern(stroke);
        line.MarkerSize = 0;
    }

    public void Path(IReadOnlyList<double> xs, IReadOnlyList<double> ys, string ink, Stroke stroke, float width = 2)
    {
        var path = _plot.Add.ScatterLine(xs.ToArray(), ys.ToArray());
        path.Color = Color.FromHex(ink);
        path.LineWidth = width;
        path.LinePattern = Pattern(stroke);
    }

    public void Band(IReadOnlyList<double> xs, IReadOnlyList<double> low, IReadOnlyList<double> high, string ink)
    {
        var band = _plot.Add.FillY(xs.ToArray(), low.ToArray(), high.ToArray());
        band.FillColor = Color.FromHex(ink).WithAlpha(0.15);
        band.LineWidth = 0;
        band.MarkerSize = 0;
    }

    public void Bar(double x, double height, double halfWidth, string ink, bool hollow)
    {
        var bar = _plot.Add.Rectangle(x - halfWidth, x + halfWidth, 0, height);
        bar.FillColor = hollow ? Colors.White : Color.FromHex(ink);
        bar.LineColor = Color.FromHex(ink);
        bar.LineWidth = hollow ? 1 : 0;
    }

    public void Mark(double x, double y, MarkShape shape, string ink, float size = 8)
    {
        var mark = _plot.Add.Marker(x, y);
        mark.MarkerStyle.Shape = shape switch
        {
            MarkShape.Ring => MarkerShape.OpenCircle,
            MarkShape.Triangle => MarkerShape.FilledTriangleUp,
            MarkShape.Diamond => MarkerShape.FilledDiamond,
            MarkShape.Square => MarkerShape.FilledSquare,
            MarkShape.HollowSquare => MarkerShape.OpenSquare,
            _ => MarkerShape.FilledCircle,
        };
        mark.MarkerStyle.Size = size;
        mark.MarkerStyle.FillColor = Color.FromHex(ink);
        mark.MarkerStyle.LineColor = Color.FromHex(ink);
        mark.MarkerStyle.LineWidth = shape == MarkShape.Ring ? 1.5f : 0;
    }

    /// <summary>Writes text at a place of the data.</summary>
    public void Label(double x, double y, string text, TextAnchor anchor, double dx = 0, double dy = 0, string ink = Palette.Text) =>
        Labels.Add(new ChartLabel(Frame.PixelX(X, x) + dx, Frame.PixelY(Y, y) + dy, text, anchor, ink));

    /// <summary>Writes text at a place of the picture, in its own units.</summary>
    public void LabelAt(double left, double top, string text, TextAnchor anchor, string ink = Palette.Text) =>
        Labels.Add(new ChartLabel(left, top, text, anchor, ink));

    public string Geometry() => _plot.GetSvgXml(Frame.Width, Frame.Height);

    private static LinePattern Pattern(Stroke stroke) => stroke switch
    {
        Stroke.Dashed => LinePattern.Dashed,
        Stroke.Dotted => LinePattern.Dotted,
        _ => LinePattern.Solid,
    };
}
