namespace PartsSignal.Analysis.Statistics.Calibration;

/// <summary>Isotonic regression by pooling adjacent violators (Ayer et al. 1955).</summary>
public static class Isotonic
{
    /// <summary>The closest non-decreasing values to a list, in weighted least squares.</summary>
    /// <param name="values">Values in the order of their scores; tied scores must be merged before.</param>
    /// <param name="weights">Above 0; null: all alike.</param>
    public static IReadOnlyList<double> Fit(IReadOnlyList<double> values, IReadOnlyList<double>? weights = null)
    {
        var blocks = new List<(double Sum, double Weight, int Count)>();
        for (int i = 0; i < values.Count; i++)
        {
            double weight = weights?[i] ?? 1;
            (double Sum, double Weight, int Count) block = (values[i] * weight, weight, 1);
            while (blocks.Count > 0 && blocks[^1].Sum / blocks[^1].Weight >= block.Sum / block.Weight)
            {
                (double sum, double held, int count) = blocks[^1];
                block = (block.Sum + sum, block.Weight + held, block.Count + count);
                blocks.RemoveAt(blocks.Count - 1);
            }

            blocks.Add(block);
        }

        return [.. blocks.SelectMany(b => Enumerable.Repeat(b.Sum / b.Weight, b.Count))];
    }
}
