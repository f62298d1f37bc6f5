namespace PartsSignal.Reports.Charts;

/// <summary>
/// The colors of all plots. Three hues that stay apart for every common kind of color blindness (after Okabe and Ito, 2008),
/// dark enough for small marks on white. Each has a shape or dash of its own, so no meaning depends on hue alone.
/// </summary>
internal static class Palette
{
    public const string Main = "#0B5A8C";
    public const string Alert = "#B3420A";
    public const string Third = "#1B7A5A";
    public const string Quiet = "#6B6B6B";
    public const string Rule = "#D9D6CE";
    public const string Text = "#222222";
}

/// <summary>Shape of a mark.</summary>
internal enum MarkShape
{
    Dot,
    Ring,
    Triangle,
    Square,
    HollowSquare,
}

/// <summary>How a line is drawn.</summary>
internal enum Stroke
{
    Solid,
    Dashed,
    Dotted,
}
