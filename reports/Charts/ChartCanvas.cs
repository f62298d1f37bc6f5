using ScottPlot;

namespace PartsSignal.Reports.Charts;

/// <summary>
/// Marks drawn with ScottPlot on a fixed frame. ScottPlot draws no text: labels measured with the fonts of one machine would
/// move on another and vanish on one without fonts, so <see cref="ChartSvg"/> writes them as SVG text.
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

    public void Line(double x1, double y1, double x2, double y2, string color, float width = 1, Stroke stroke = Stroke.Solid)
    {
        var line = _plot.Add.Line(x1, y1, x2, y2);
        line.Color = Color.FromHex(color);
        line.LineWidth = width;
        line.LinePattern = Pattern(stroke);
        line.MarkerSize = 0;
    }

    public void Path(IReadOnlyList<double> xs, IReadOnlyList<double> ys, string color, Stroke stroke, float width = 2)
    {
        var path = _plot.Add.ScatterLine(xs.ToArray(), ys.ToArray());
        path.Color = Color.FromHex(color);
        path.LineWidth = width;
        path.LinePattern = Pattern(stroke);
    }

    public void Band(IReadOnlyList<double> xs, IReadOnlyList<double> low, IReadOnlyList<double> high, string color)
    {
        var band = _plot.Add.FillY(xs.ToArray(), low.ToArray(), high.ToArray());
        band.FillColor = Color.FromHex(color).WithAlpha(0.15);
        band.LineWidth = 0;
        band.MarkerSize = 0;
    }

    public void Bar(double x, double height, double halfWidth, string color, bool hollow)
    {
        var bar = _plot.Add.Rectangle(x - halfWidth, x + halfWidth, 0, height);
        bar.FillColor = hollow ? Colors.White : Color.FromHex(color);
        bar.LineColor = Color.FromHex(color);
        bar.LineWidth = hollow ? 1 : 0;
    }

    public void Mark(double x, double y, MarkShape shape, string color, float size = 8)
    {
        var mark = _plot.Add.Marker(x, y);
        mark.MarkerStyle.Shape = shape switch
        {
            MarkShape.Ring => MarkerShape.OpenCircle,
            MarkShape.Triangle => MarkerShape.FilledTriangleUp,
            _ => MarkerShape.FilledCircle,
        };
        mark.MarkerStyle.Size = size;
        mark.MarkerStyle.FillColor = Color.FromHex(color);
        mark.MarkerStyle.LineColor = Color.FromHex(color);
        mark.MarkerStyle.LineWidth = shape == MarkShape.Ring ? 1.5f : 0;
    }

    /// <summary>Writes text at a position in data coordinates.</summary>
    public void Label(double x, double y, string text, TextAnchor anchor, double dx = 0, double dy = 0, string color = Palette.Text) =>
        Labels.Add(new ChartLabel(Frame.PixelX(X, x) + dx, Frame.PixelY(Y, y) + dy, text, anchor, color));

    /// <summary>Writes text at a position in picture units.</summary>
    public void LabelAt(double left, double top, string text, TextAnchor anchor, string color = Palette.Text) =>
        Labels.Add(new ChartLabel(left, top, text, anchor, color));

    public string Geometry() => _plot.GetSvgXml(Frame.Width, Frame.Height);

    private static LinePattern Pattern(Stroke stroke) => stroke switch
    {
        Stroke.Dashed => LinePattern.Dashed,
        Stroke.Dotted => LinePattern.Dotted,
        _ => LinePattern.Solid,
    };
}

/// <summary>Size of a picture and the margins around its data, in picture units. 440 units span a phone screen and a printed column alike.</summary>
internal sealed record ChartFrame(int Height, int Left = 52, int Right = 22, int Top = 14, int Bottom = 44, int Width = 440)
{
    public double PixelX(Scale scale, double value) => Left + ((value - scale.Min) / (scale.Max - scale.Min) * (Width - Left - Right));

    public double PixelY(Scale scale, double value) => Height - Bottom - ((value - scale.Min) / (scale.Max - scale.Min) * (Height - Top - Bottom));
}

/// <summary>Which end of a text sits at its position.</summary>
internal enum TextAnchor
{
    Start,
    Middle,
    End,
}

/// <summary>Text on a picture.</summary>
internal sealed record ChartLabel(double Left, double Top, string Text, TextAnchor Anchor, string Color, bool Upwards = false);
