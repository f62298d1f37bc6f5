using System.Globalization;
using System.Xml.Linq;

namespace PartsSignal.Reports.Charts;

/// <summary>Draws the sample of a legend entry: a stretch of its line, its mark, or both.</summary>
internal static class LegendSvg
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    public static IEnumerable<XElement> Sample(LegendSample sample)
    {
        LegendEntry entry = sample.Entry;
        if (entry.Stroke is { } stroke)
        {
            var line = Path($"M{N(sample.Left)} {N(sample.Middle)}h18", entry.Ink, filled: false);
            line.Add(new XAttribute("stroke-width", "2"));
            if (stroke != Stroke.Solid)
            {
                line.Add(new XAttribute("stroke-dasharray", stroke == Stroke.Dashed ? "6 4" : "2 3"));
            }

            yield return line;
        }

        if (entry.Shape is { } shape)
        {
            string at = $"M{N(sample.Left + 9)} {N(sample.Middle)}";
            yield return shape switch
            {
                MarkShape.Triangle => Path(at + "m-5 4h10l-5 -9z", entry.Ink, filled: true),
                MarkShape.Diamond => Path(at + "m-5 0l5 -5l5 5l-5 5z", entry.Ink, filled: true),
                MarkShape.Square => Path(at + "m-4 -4h8v8h-8z", entry.Ink, filled: true),
                MarkShape.HollowSquare => Path(at + "m-4 -4h8v8h-8z", entry.Ink, filled: false),
                MarkShape.Ring => Path(at + "m-4 0a4 4 0 1 0 8 0a4 4 0 1 0 -8 0", entry.Ink, filled: false),
                _ => Path(at + "m-4 0a4 4 0 1 0 8 0a4 4 0 1 0 -8 0", entry.Ink, filled: true),
            };
        }
    }

    private static XElement Path(string d, string ink, bool filled) => new(Svg + "path",
        new XAttribute("d", d), new XAttribute("fill", filled ? ink : "none"), new XAttribute("stroke", ink));

    private static string N(double value) => Math.Round(value, 1).ToString(CultureInfo.InvariantCulture);
}
