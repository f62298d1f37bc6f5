namespace PartsSignal.Reports.Charts;

/// <summary>Size of a picture and the room around its data, in the picture's own units: 440 units span a phone and a printed column alike.</summary>
internal sealed record ChartFrame(int Height, int Left = 52, int Right = 22, int Top = 14, int Bottom = 44, int Width = 440)
{
    public double PixelX(Scale scale, double value) => Left + ((value - scale.Min) / (scale.Max - scale.Min) * (Width - Left - Right));

    public double PixelY(Scale scale, double value) => Height - Bottom - ((value - scale.Min) / (scale.Max - scale.Min) * (Height - Top - Bottom));
}

/// <summary>Which end of a text sits at its place.</summary>
internal enum TextAnchor
{
    Start,
    Middle,
    End,
}

/// <summary>Text on a picture.</summary>
internal sealed record ChartLabel(double Left, double Top, string Text, TextAnchor Anchor, string Ink, bool Upwards = false);
