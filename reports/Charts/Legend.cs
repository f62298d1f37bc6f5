using System.Globalization;
using System.Xml.Linq;

namespace PartsSignal.Reports.Charts;

/// <summary>One entry of a legend.</summary>
internal sealed record LegendEntry(string Text, string Color, MarkShape? Shape = null, Stroke? Stroke = null);

/// <summary>Rows of samples with their names, above the data.</summary>
internal static class Legend
{
    private const double CharacterWidth = 6.1;
    private const double SampleWidth = 24;

    /// <summary>Height the legend needs above the data, in picture units.</summary>
    public static int Height(IReadOnlyList<LegendEntry> entries, int width) => entries.Count == 0 ? 0 : 18 * (Place(entries, width).Max(p => p.Row) + 1);

    public static void Draw(ChartCanvas canvas, IReadOnlyList<LegendEntry> entries)
    {
        foreach ((LegendEntry entry, double left, int row) in Place(entries, canvas.Frame.Width))
        {
            double top = 12 + (18 * row);
            canvas.Samples.Add(new LegendSample(left, top - 4, entry));
            canvas.LabelAt(left + SampleWidth, top, entry.Text, TextAnchor.Start);
        }
    }

    private static List<(LegendEntry Entry, double Left, int Row)> Place(IReadOnlyList<LegendEntry> entries, int width)
    {
        var placed = new List<(LegendEntry, double, int)>();
        double left = 8;
        int row = 0;
        foreach (LegendEntry entry in entries)
        {
            double needed = SampleWidth + (entry.Text.Length * CharacterWidth) + 14;
            if (left > 8 && left + needed > width)
            {
                (left, row) = (8, row + 1);
            }

            placed.Add((entry, left, row));
            left += needed;
        }

        return placed;
    }
}

/// <summary>The sample of one legend entry and its position in the picture.</summary>
internal sealed record LegendSample(double Left, double Middle, LegendEntry Entry);

/// <summary>Draws the sample of a legend entry: a piece of its line, its mark, or both.</summary>
internal static class LegendSvg
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    public static IEnumerable<XElement> Sample(LegendSample sample)
    {
        LegendEntry entry = sample.Entry;
        if (entry.Stroke is { } stroke)
        {
            var line = Path($"M{N(sample.Left)} {N(sample.Middle)}h18", entry.Color, filled: false);
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
                MarkShape.Triangle => Path(at + "m-5 4h10l-5 -9z", entry.Color, filled: true),
                MarkShape.Square => Path(at + "m-4 -4h8v8h-8z", entry.Color, filled: true),
                MarkShape.HollowSquare => Path(at + "m-4 -4h8v8h-8z", entry.Color, filled: false),
                MarkShape.Ring => Path(at + "m-4 0a4 4 0 1 0 8 0a4 4 0 1 0 -8 0", entry.Color, filled: false),
                _ => Path(at + "m-4 0a4 4 0 1 0 8 0a4 4 0 1 0 -8 0", entry.Color, filled: true),
            };
        }
    }

    private static XElement Path(string d, string color, bool filled) => new(Svg + "path",
        new XAttribute("d", d), new XAttribute("fill", filled ? color : "none"), new XAttribute("stroke", color));

    private static string N(double value) => Math.Round(value, 1).ToString(CultureInfo.InvariantCulture);
}
