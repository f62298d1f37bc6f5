namespace PartsSignal.Analysis.AgeCurves;

/// <summary>Two-sided 95 % intervals on transformed scales.</summary>
internal static class Interval95
{
    /// <summary>The 0.975 quantile of the standard normal.</summary>
    public const double Z = 1.959963984540054;

    /// <summary>
    /// Interval of a probability on the log(-log) scale, which stays within 0 and 1: S^exp(-+ z se / (S log S))
    /// (Kalbfleisch and Prentice 1980). Null at 0 and 1, where the scale ends.
    /// </summary>
    public static (double Lower, double Upper)? LogLog(double probability, double? standardError)
    {
        if (standardError is not { } se || probability <= 0 || probability >= 1)
        {
            return null;
        }

        double log = Math.Log(probability);
        double width = Z * se / (probability * Math.Abs(log));
        return (Math.Exp(log * Math.Exp(width)), Math.Exp(log * Math.Exp(-width)));
    }

    /// <summary>Interval of a positive figure on the log scale; null at 0.</summary>
    public static (double Lower, double Upper)? Log(double value, double standardError) =>
        value <= 0 ? null : (value * Math.Exp(-Z * standardError / value), value * Math.Exp(Z * standardError / value));
}
