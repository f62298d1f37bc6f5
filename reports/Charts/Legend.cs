namespace PartsSignal.Reports.Charts;

/// <summary>One entry of a legend.</summary>
internal sealed record LegendEntry(string Text, string Ink, MarkShape? Shape = null, Stroke? Stroke = null);

/// <summary>A line of samples with words above the data.</summary>
internal static class Legend
{
    private const double CharacterWidth = 6.1;
    private const double SampleWidth = 24;

    /// <summary>Room the legend needs above the data, in the picture's units.</summary>
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

/// <summary>The sample of one legend entry, at its place in the picture.</summary>
internal sealed record LegendSample(double Left, double Middle, LegendEntry Entry);
