namespace PartsSignal.Analysis.Statistics.Trend;

/// <summary>One period on the chart.</summary>
/// <param name="Rate">Count / exposure.</param>
/// <param name="Sigma">Poisson standard deviation of the rate at the overall level.</param>
/// <param name="Z">(Rate - overall) / sigma.</param>
/// <param name="Lower">Lower three-sigma limit, not below 0.</param>
/// <param name="Upper">Upper three-sigma limit.</param>
/// <param name="LaneyLower">Lower limit widened by sigma_z, not below 0; null with one period.</param>
/// <param name="LaneyUpper">Upper limit widened by sigma_z; null with one period.</param>
public sealed record UChartPoint(double Rate, double Sigma, double Z, double Lower, double Upper, double? LaneyLower, double? LaneyUpper);

/// <summary>
/// A u-chart with its own limits and Laney's (2002), which widen by how much periods scatter beyond Poisson. For counts
/// under about five a period neither is right: use exact limits.
/// </summary>
/// <param name="Overall">All counts / all exposure.</param>
/// <param name="SigmaZ">Mean moving range of z / 1.128; null with one period.</param>
/// <param name="Points">The periods, in order.</param>
public sealed record UChart(double Overall, double? SigmaZ, IReadOnlyList<UChartPoint> Points)
{
    // Expected range of two standard normal values.
    private const double RangeOfTwo = 1.128;

    /// <summary>A chart; null where there is no exposure or no event. Every period needs exposure above 0.</summary>
    public static UChart? Of(IReadOnlyList<(long Count, double Exposure)> periods)
    {
        double events = periods.Sum(p => p.Count), exposure = periods.Sum(p => p.Exposure);
        if (periods.Any(p => !(p.Exposure > 0)))
        {
            throw new ArgumentOutOfRangeException(nameof(periods), "Every period needs exposure.");
        }

        if (!(events > 0))
        {
            return null;
        }

        double overall = events / exposure;
        double[] sigma = [.. periods.Select(p => Math.Sqrt(overall / p.Exposure))];
        double[] z = [.. periods.Select((p, i) => ((p.Count / p.Exposure) - overall) / sigma[i])];
        double? sigmaZ = z.Length > 1 ? z.Skip(1).Select((v, i) => Math.Abs(v - z[i])).Average() / RangeOfTwo : null;
        return new UChart(overall, sigmaZ, [.. periods.Select((p, i) => new UChartPoint(
            p.Count / p.Exposure,
            sigma[i],
            z[i],
            Math.Max(0, overall - (3 * sigma[i])),
            overall + (3 * sigma[i]),
            sigmaZ is { } lower ? Math.Max(0, overall - (3 * sigma[i] * lower)) : null,
            sigmaZ is { } upper ? overall + (3 * sigma[i] * upper) : null))]);
    }
}
