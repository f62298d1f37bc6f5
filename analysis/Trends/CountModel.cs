using PartsSignal.Analysis.Statistics.Numerics;

namespace PartsSignal.Analysis.Trends;

/// <summary>A log-linear model of counts, fitted by maximum likelihood, or the reason why it cannot be.</summary>
/// <param name="Coefficients">Of the terms; empty when missing.</param>
/// <param name="StandardErrors">Of the coefficients, at dispersion 1.</param>
/// <param name="Fitted">Expected count of each row.</param>
/// <param name="Leverages">Pull of each row on its own fit, 0 to 1.</param>
/// <param name="Deviance">Twice the log likelihood short of a perfect fit.</param>
/// <param name="Dispersion">Pearson statistic per degree of freedom, not floored; null without degrees of freedom.</param>
/// <param name="LogLikelihood">At the maximum.</param>
/// <param name="Theta">Size of the negative binomial (variance m + m^2/theta), or null for a Poisson.</param>
/// <param name="Missing">Why there is no model; null when there is one.</param>
internal sealed record CountModel(
    IReadOnlyList<double> Coefficients,
    IReadOnlyList<double> StandardErrors,
    IReadOnlyList<double> Fitted,
    IReadOnlyList<double> Leverages,
    double Deviance,
    double? Dispersion,
    double LogLikelihood,
    double? Theta,
    string? Missing)
{
    /// <summary>Variance of the linear predictor at given terms, dispersion 1; kept by the fit for predictions.</summary>
    internal SymmetricSystem? Information { get; init; }

    /// <summary>Expected count at given terms and exposure.</summary>
    public double Predict(IReadOnlyList<double> terms, double exposure) =>
        exposure * Math.Exp(terms.Zip(Coefficients, (t, c) => t * c).Sum());

    /// <summary>Standard error of the log of the expected count at given terms, at dispersion 1.</summary>
    public double LogError(IReadOnlyList<double> terms) => Math.Sqrt(Information!.InverseForm([.. terms]));

    /// <summary>No model, and why.</summary>
    public static CountModel None(string reason) => new([], [], [], [], 0, null, 0, null, reason);
}

/// <summary>One count with what is thought to move it.</summary>
/// <param name="Count">The count, 0 or more.</param>
/// <param name="Exposure">What the count is out of, above 0: its log is the offset.</param>
/// <param name="Terms">Values of the terms, the constant among them; the same number on every row.</param>
/// <param name="Weight">Weight of the row, 1 unless past outbreaks are played down.</param>
internal sealed record CountRow(double Count, double Exposure, IReadOnlyList<double> Terms, double Weight = 1);

/// <summary>Terms of a monthly model.</summary>
internal static class MonthTerms
{
    /// <summary>Constant, straight line in the log, and one yearly wave: 1, t, sin(2 pi t/12), cos(2 pi t/12).</summary>
    public static double[] TrendAndSeason(double month) => [1, month, Math.Sin(2 * Math.PI * month / 12), Math.Cos(2 * Math.PI * month / 12)];

    /// <summary>Constant and one yearly wave.</summary>
    public static double[] Season(double month) => [1, Math.Sin(2 * Math.PI * month / 12), Math.Cos(2 * Math.PI * month / 12)];

    /// <summary>Constant and straight line in the log.</summary>
    public static double[] Trend(double month) => [1, month];
}
