namespace PartsSignal.Reports.Charts;

/// <summary>A mark on an axis with its label.</summary>
internal sealed record Tick(double At, string Text);

/// <summary>One axis: its ends, its marks and its title with the unit.</summary>
internal sealed record Scale(double Min, double Max, IReadOnlyList<Tick> Ticks, string Title)
{
    /// <summary>A scale from zero to at least <paramref name="top"/>, with round marks.</summary>
    /// <param name="top">Highest value shown; below or at zero: 1.</param>
    /// <param name="title">Axis title with unit.</param>
    /// <param name="text">Label of a mark.</param>
    /// <param name="wanted">Marks wanted, about.</param>
    public static Scale FromZero(double top, string title, Func<double, string> text, int wanted = 5) =>
        Between(0, top > 0 ? top : 1, title, text, wanted);

    /// <summary>A scale that holds both ends, widened to round marks.</summary>
    public static Scale Between(double low, double high, string title, Func<double, string> text, int wanted = 5)
    {
        double span = high > low ? high - low : 1;
        double step = RoundStep(span / wanted);
        double first = Math.Floor((low / step) + 1e-9) * step;
        double last = Math.Ceiling((high / step) - 1e-9) * step;
        int count = (int)Math.Round((last - first) / step);
        var ticks = Enumerable.Range(0, count + 1).Select(i => first + (i * step)).Select(v => new Tick(v, text(v)));
        return new Scale(first, Math.Max(last, first + step), [.. ticks], title);
    }

    /// <summary>Equal places 0, 1, 2 ... with a name each.</summary>
    public static Scale Places(IReadOnlyList<string> names, string title) =>
        new(-0.5, Math.Max(names.Count, 1) - 0.5, [.. names.Select((n, i) => new Tick(i, n))], title);

    private static double RoundStep(double rough)
    {
        double power = Math.Pow(10, Math.Floor(Math.Log10(rough)));
        double unit = rough / power;
        return power * (unit <= 1 ? 1 : unit <= 2 ? 2 : unit <= 2.5 ? 2.5 : unit <= 5 ? 5 : 10);
    }
}
