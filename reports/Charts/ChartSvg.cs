using System.Globalization;
using System.Xml.Linq;
using PartsSignal.Reports.Components;

namespace PartsSignal.Reports.Charts;

/// <summary>Turns a canvas into a figure: inline SVG with real text, unique ids, a name and a description, and a caption.</summary>
internal static class ChartSvg
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    public static Node Figure(ChartCanvas canvas, ChartText text)
    {
        string picture = "chart-" + text.Key;
        XElement svg = new(Svg + "svg",
            new XAttribute("viewBox", $"0 0 {canvas.Frame.Width} {canvas.Frame.Height}"),
            new XAttribute("role", "img"),
            new XAttribute("aria-labelledby", $"{picture}-name {picture}-words"),
            new XElement(Svg + "title", new XAttribute("id", picture + "-name"), text.Title),
            new XElement(Svg + "desc", new XAttribute("id", picture + "-words"), text.Alternative),
            Axes(canvas),
            Marks(canvas.Geometry(), picture),
            canvas.Samples.SelectMany(LegendSvg.Sample),
            canvas.Labels.Select(Label));
        return new Element("figure",
            Tag.Div(text.Title).Class("chart-title"),
            new TrustedNode(svg.ToString(SaveOptions.DisableFormatting)),
            new Element("figcaption", text.Conclusion, " ", Tag.Span(text.Basis).Class("basis"))).Class("chart").Id(picture);
    }

    private static IEnumerable<XElement> Axes(ChartCanvas canvas)
    {
        ChartFrame frame = canvas.Frame;
        double bottom = frame.Height - frame.Bottom, right = frame.Width - frame.Right;
        foreach (Tick tick in canvas.X.Ticks)
        {
            yield return Label(new ChartLabel(frame.PixelX(canvas.X, tick.At), bottom + 15, tick.Text, TextAnchor.Middle, Palette.Text));
        }

        foreach (Tick tick in canvas.Y.Ticks)
        {
            double at = frame.PixelY(canvas.Y, tick.At);
            yield return Rule(frame.Left, at, right, at, Palette.Rule);
            yield return Label(new ChartLabel(frame.Left - 6, at + 4, tick.Text, TextAnchor.End, Palette.Text));
        }

        yield return Rule(frame.Left, bottom, right, bottom, Palette.Quiet);
        yield return Label(new ChartLabel((frame.Left + right) / 2, frame.Height - 6, canvas.X.Title, TextAnchor.Middle, Palette.Text));
        yield return Label(new ChartLabel(12, (frame.Top + bottom) / 2, canvas.Y.Title, TextAnchor.Middle, Palette.Text, Upwards: true));
    }

    private static IEnumerable<XElement> Marks(string geometry, string prefix)
    {
        XElement root = XDocument.Parse(geometry).Root!;
        var ids = root.Descendants().Attributes("id").Select((a, i) => (Old: a.Value, New: $"{prefix}-{i + 1}")).ToDictionary(p => p.Old, p => p.New);
        root.Descendants(Svg + "text").Remove();
        foreach (XAttribute attribute in root.Descendants().Attributes())
        {
            if (attribute.Name == "id")
            {
                attribute.Value = ids[attribute.Value];
            }
            else if (attribute.Value.StartsWith("url(#", StringComparison.Ordinal))
            {
                attribute.Value = $"url(#{ids[attribute.Value[5..^1]]})";
            }
        }

        return root.Elements();
    }

    private static XElement Rule(double x1, double y1, double x2, double y2, string color) =>
        new(Svg + "path", new XAttribute("d", $"M{Number(x1)} {Number(y1)}L{Number(x2)} {Number(y2)}"), new XAttribute("stroke", color), new XAttribute("fill", "none"));

    private static XElement Label(ChartLabel label) => new(Svg + "text",
        label.Upwards
            ? new XAttribute("transform", $"translate({Number(label.Left)} {Number(label.Top)})rotate(-90)")
            : new XAttribute("x", Number(label.Left)),
        label.Upwards ? null : new XAttribute("y", Number(label.Top)),
        new XAttribute("fill", label.Color),
        label.Anchor == TextAnchor.Start ? null : new XAttribute("text-anchor", label.Anchor == TextAnchor.End ? "end" : "middle"),
        label.Text);

    private static string Number(double value) => Math.Round(value, 1).ToString(CultureInfo.InvariantCulture);
}
