namespace PartsSignal.Analysis.Trends;

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
