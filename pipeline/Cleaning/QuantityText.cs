namespace PartsSignal.Pipeline.Cleaning;

/// <summary>Reads a count: <c>2</c>, <c>2.0</c>, <c>x2</c>, <c>2 pcs</c>, <c>2,00</c>.</summary>
internal static class QuantityText
{
    private static readonly string[] Units = ["pieces", "piece", "pcs", "pc", "ea", "each", "units", "unit", "off", "st", "x", "no"];

    /// <summary>Reads a whole number. Parts of a piece are not read.</summary>
    public static bool TryRead(ReadOnlySpan<char> cell, NumberStyle style, out int count)
    {
        count = 0;
        ReadOnlySpan<char> text = cell.Trim().TrimStart("xX*\u00d7 ").TrimEnd(". ");
        foreach (string unit in Units)
        {
            if (text.Length > unit.Length && text.EndsWith(unit, StringComparison.OrdinalIgnoreCase) && !char.IsLetter(text[^(unit.Length + 1)]))
            {
                text = text[..^unit.Length].TrimEnd();
                break;
            }
        }

        if (!NumberText.TryRead(text, style, out decimal value)
            && !NumberText.TryRead(text, style == NumberStyle.Point ? NumberStyle.Comma : NumberStyle.Point, out value))
        {
            return false;
        }

        if (value != decimal.Truncate(value) || Math.Abs(value) > int.MaxValue)
        {
            return false;
        }

        count = (int)value;
        return true;
    }
}
