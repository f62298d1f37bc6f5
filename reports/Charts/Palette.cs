namespace PartsSignal.Reports.Charts;

/// <summary>
/// The inks of all plots. Three hues that stay apart for every common kind of colour blindness (after Okabe and Ito, 2008),
/// dark enough for small marks on white; each goes with a shape or a dash of its own, so none is told by hue alone.
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
    Diamond,
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
