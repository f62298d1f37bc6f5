namespace PartsSignal.Pipeline.Cleaning;

/// <summary>Which mark stands before the decimals; one style holds for a whole file.</summary>
public enum NumberStyle
{
    /// <summary>1,234.50</summary>
    Point,

    /// <summary>1.234,50</summary>
    Comma,
}
