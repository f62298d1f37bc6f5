namespace PartsSignal.Pipeline.Cleaning;

/// <summary>Reads a size class.</summary>
internal static class SizeClassText
{
    /// <summary><c>small</c>, <c>medium</c>, <c>large</c> or <c>bulky</c>, or null for another word.</summary>
    public static string? Read(ReadOnlySpan<char> cell)
    {
        Span<char> lower = stackalloc char[12];
        cell = cell.Trim();
        if (cell.Length is 0 or > 12)
        {
            return null;
        }

        cell.ToLowerInvariant(lower);
        return lower[..cell.Length] switch
        {
            "s" or "small" or "xs" or "tiny" => "small",
            "m" or "medium" or "med" => "medium",
            "l" or "large" or "big" => "large",
            "xl" or "xxl" or "bulky" or "oversize" or "extra large" => "bulky",
            _ => null,
        };
    }
}
