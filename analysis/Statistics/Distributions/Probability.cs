namespace PartsSignal.Analysis.Statistics.Distributions;

/// <summary>Argument checks shared by the distributions.</summary>
internal static class Probability
{
    /// <summary>The probability itself, if it is one.</summary>
    public static double Check(double p) => p is >= 0 and <= 1
        ? p
        : throw new ArgumentOutOfRangeException(nameof(p), p, "A probability is between 0 and 1.");

    /// <summary>The parameter itself, if it is finite and above zero.</summary>
    public static double Positive(double value, string name) => value > 0 && double.IsFinite(value)
        ? value
        : throw new ArgumentOutOfRangeException(name, value, "A finite number above 0 is needed.");
}
