namespace PartsSignal.Analysis.Statistics;

/// <summary>
/// A figure with its interval, or the reason why there is none. Never NaN and never a stand-in zero.
/// </summary>
public sealed record Estimate
{
    private Estimate(double? value, double? lower, double? upper, string? missing) =>
        (Value, Lower, Upper, Missing) = (value, lower, upper, missing);

    /// <summary>The point estimate, in the unit the producing method states; null when it cannot be given.</summary>
    public double? Value { get; }

    /// <summary>Lower end of the interval; null when it cannot be given.</summary>
    public double? Lower { get; }

    /// <summary>Upper end of the interval; null when open or when it cannot be given.</summary>
    public double? Upper { get; }

    /// <summary>Why there is no value; null when there is one.</summary>
    public string? Missing { get; }

    /// <summary>A value with an interval.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A number is NaN or infinite.</exception>
    public static Estimate From(double value, double? lower, double? upper)
    {
        if (!double.IsFinite(value) || lower is { } l && !double.IsFinite(l) || upper is { } u && !double.IsFinite(u))
        {
            throw new ArgumentOutOfRangeException(nameof(value), "An estimate is finite, or missing with a reason.");
        }

        return new Estimate(value, lower, upper, null);
    }

    /// <summary>No value, and why.</summary>
    public static Estimate None(string reason) => new(null, null, null, reason);
}
