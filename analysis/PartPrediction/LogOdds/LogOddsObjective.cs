namespace PartsSignal.Analysis.PartPrediction.LogOdds;

/// <summary>
/// Penalised negative log likelihood of the jobs under a table of weights: sum of -log p(truth) plus w^2 / (2 spread^2)
/// of every weight. Rows are dealt to a fixed number of lots whose sums are added in order, so the result is the same to
/// the last digit on any number of threads.
/// </summary>
internal sealed class LogOddsObjective(DesignRows rows, int needs, double[] precision)
{
    private const int Lots = 4;

    /// <summary>Value at the weights; the gradient is written to <paramref name="gradient"/>.</summary>
    public double Evaluate(double[] weights, double[] gradient)
    {
        var losses = new double[Lots];
        var sums = new double[Lots][];
        Parallel.For(0, Lots, lot =>
        {
            double[] sum = sums[lot] = new double[weights.Length];
            losses[lot] = Lot(lot, weights, (row, odds) => AddGradient(row, odds, sum));
        });
        double value = losses.Sum();
        for (int j = 0; j < weights.Length; j++)
        {
            double slope = precision[j] * weights[j];
            value += 0.5 * slope * weights[j];
            foreach (double[] sum in sums)
            {
                slope += sum[j];
            }

            gradient[j] = slope;
        }

        return value;
    }

    /// <summary>Diagonal of the likelihood's second derivative at the weights, without the penalty.</summary>
    public double[] Curvature(double[] weights)
    {
        var sums = new double[Lots][];
        Parallel.For(0, Lots, lot =>
        {
            double[] sum = sums[lot] = new double[weights.Length];
            Lot(lot, weights, (row, odds) => AddCurvature(row, odds, sum));
        });
        var total = new double[weights.Length];
        foreach (double[] sum in sums)
        {
            for (int j = 0; j < total.Length; j++)
            {
                total[j] += sum[j];
            }
        }

        return total;
    }

    private double Lot(int lot, double[] weights, Action<int, double[]> use)
    {
        var odds = new double[needs];
        double loss = 0;
        int from = (int)((long)rows.Count * lot / Lots), to = (int)((long)rows.Count * (lot + 1) / Lots);
        for (int row = from; row < to; row++)
        {
            int[] allowed = rows.Allowed[row];
            for (int a = 0; a < allowed.Length; a++)
            {
                odds[allowed[a]] = 0;
            }

            for (int e = rows.Starts[row]; e < rows.Starts[row + 1]; e++)
            {
                ReadOnlySpan<double> weight = weights.AsSpan(rows.Places[e] * needs, needs);
                double value = rows.Values[e];
                foreach (int k in allowed)
                {
                    odds[k] += value * weight[k];
                }
            }

            for (int s = rows.SingleStarts[row]; s < rows.SingleStarts[row + 1]; s++)
            {
                (int weight, int need, double value) = rows.Singles[s];
                odds[need] += value * weights[weight];
            }

            loss -= SoftMax.Apply(odds, allowed, rows.Truth[row]);
            use(row, odds);
        }

        return loss;
    }

    private void AddGradient(int row, double[] odds, double[] sum)
    {
        int[] allowed = rows.Allowed[row];
        odds[rows.Truth[row]] -= 1;
        for (int e = rows.Starts[row]; e < rows.Starts[row + 1]; e++)
        {
            Span<double> slope = sum.AsSpan(rows.Places[e] * needs, needs);
            double value = rows.Values[e];
            foreach (int k in allowed)
            {
                slope[k] += value * odds[k];
            }
        }

        for (int s = rows.SingleStarts[row]; s < rows.SingleStarts[row + 1]; s++)
        {
            (int weight, int need, double value) = rows.Singles[s];
            sum[weight] += Has(allowed, need) ? value * odds[need] : 0;
        }
    }

    private void AddCurvature(int row, double[] odds, double[] sum)
    {
        int[] allowed = rows.Allowed[row];
        for (int e = rows.Starts[row]; e < rows.Starts[row + 1]; e++)
        {
            Span<double> bend = sum.AsSpan(rows.Places[e] * needs, needs);
            double square = rows.Values[e] * rows.Values[e];
            foreach (int k in allowed)
            {
                bend[k] += square * odds[k] * (1 - odds[k]);
            }
        }

        for (int s = rows.SingleStarts[row]; s < rows.SingleStarts[row + 1]; s++)
        {
            (int weight, int need, double value) = rows.Singles[s];
            sum[weight] += Has(allowed, need) ? value * value * odds[need] * (1 - odds[need]) : 0;
        }
    }

    private static bool Has(int[] allowed, int need) => Array.BinarySearch(allowed, need) >= 0;
}
