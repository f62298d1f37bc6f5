namespace PartsSignal.Analysis.Prediction;

/// <summary>Said and happened, for a group of calls with like confidence.</summary>
/// <param name="Bin">Number of the bin, from 1.</param>
/// <param name="From">Lowest confidence inside.</param>
/// <param name="To">Highest confidence inside.</param>
/// <param name="Jobs">Calls inside.</param>
/// <param name="Said">Mean confidence.</param>
/// <param name="Happened">Share where the likeliest need was right.</param>
internal sealed record ReliabilityBin(int Bin, double From, double To, int Jobs, double Said, double Happened);

/// <summary>How far confidence and truth lie apart, by bins that hold the same number of calls.</summary>
internal static class Reliability
{
    /// <summary>
    /// Sorts calls by the confidence of their likeliest need and cuts them into bins of equal size; where they do not
    /// divide, the first bins hold one more. Bins that would be empty are left out.
    /// </summary>
    /// <param name="forecasts">The calls.</param>
    /// <param name="bins">Number of bins, 1 or more. Default 10.</param>
    public static IReadOnlyList<ReliabilityBin> Table(IReadOnlyList<Forecast> forecasts, int bins = 10)
    {
        return Table(Sorted(forecasts), bins);
    }

    private static IReadOnlyList<ReliabilityBin> Table((double Said, bool Right)[] sorted, int bins)
    {
        var table = new List<ReliabilityBin>();
        int at = 0;
        for (int b = 0; b < bins; b++)
        {
            int size = sorted.Length / bins + (b < sorted.Length % bins ? 1 : 0);
            if (size > 0)
            {
                var inside = sorted.AsSpan(at, size);
                double said = 0, right = 0;
                foreach ((double confidence, bool hit) in inside)
                {
                    said += confidence;
                    right += hit ? 1 : 0;
                }

                table.Add(new ReliabilityBin(b + 1, inside[0].Said, inside[^1].Said, size, said / size, right / size));
                at += size;
            }
        }

        return table;
    }

    /// <summary>Expected calibration error: the bins' gaps between said and happened, weighted by their calls (Naeini et al. 2015). Null: no calls.</summary>
    public static double? Error(IReadOnlyList<ReliabilityBin> table)
    {
        int jobs = table.Sum(b => b.Jobs);
        return jobs == 0 ? null : table.Sum(b => b.Jobs * Math.Abs(b.Said - b.Happened)) / jobs;
    }

    /// <summary>The same over ten bins of answers sorted by confidence; at least one answer.</summary>
    internal static double Error((double Said, bool Right)[] sorted) => Error(Table(sorted, 10))!.Value;

    internal static (double Said, bool Right)[] Sorted(IReadOnlyList<Forecast> forecasts) =>
        [.. forecasts.Select(f => (Said: f.Confidence, Right: f.Top >= 0 && f.Top == f.Truth)).OrderBy(x => x.Said)];
}
