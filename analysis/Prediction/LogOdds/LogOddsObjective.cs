using System.Runtime.CompilerServices;

namespace PartsSignal.Analysis.Prediction.LogOdds;

/// <summary>
/// Penalised negative log likelihood of the jobs under a table of weights: sum of -log p(truth) plus w^2 / (2 spread^2)
/// of every weight. Rows are dealt to a fixed number of lots whose sums are added in order, so the result is the same to
/// the last digit on any number of threads. The loops are compiled at full strength at once: a training is over before
/// the run time would have noticed that they are hot.
/// </summary>
internal sealed class LogOddsObjective
{
    private const int Lots = 4;
    private readonly DesignRows _rows;
    private readonly double[][] _sums;
    private readonly double[] _losses = new double[Lots];
    private readonly int _needs;

    /// <summary>An objective over rows.</summary>
    /// <param name="rows">The rows.</param>
    /// <param name="needs">Number of needs.</param>
    /// <param name="weights">Number of weights.</param>
    public LogOddsObjective(DesignRows rows, int needs, int weights)
    {
        (_rows, _needs, Precision) = (rows, needs, new double[weights]);
        _sums = [.. Enumerable.Range(0, Lots).Select(_ => new double[weights])];
    }

    /// <summary>1 / spread^2 of every weight.</summary>
    public double[] Precision { get; set; }

    /// <summary>Value at the weights; the gradient is written to <paramref name="gradient"/>.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public double Evaluate(double[] weights, double[] gradient)
    {
        Parallel.For(0, Lots, lot => _losses[lot] = Lot(lot, weights, bend: false));
        double value = _losses.Sum();
        for (int j = 0; j < weights.Length; j++)
        {
            double slope = Precision[j] * weights[j];
            value += 0.5 * slope * weights[j];
            gradient[j] = slope + Total(j);
        }

        return value;
    }

    /// <summary>Diagonal of the likelihood's second derivative at the weights, without the penalty.</summary>
    public double[] Curvature(double[] weights)
    {
        Parallel.For(0, Lots, lot => Lot(lot, weights, bend: true));
        return [.. Enumerable.Range(0, weights.Length).Select(Total)];
    }

    private double Total(int j) => _sums[0][j] + _sums[1][j] + (_sums[2][j] + _sums[3][j]);

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private double Lot(int lot, double[] weights, bool bend)
    {
        double[] sum = _sums[lot];
        Array.Clear(sum);
        Span<double> room = stackalloc double[_needs];
        double loss = 0;
        int from = (int)((long)_rows.Count * lot / Lots), to = (int)((long)_rows.Count * (lot + 1) / Lots);
        for (int row = from; row < to; row++)
        {
            Span<double> odds = room[.._rows.Allowed[row].Length];
            Scores(row, weights, odds);
            loss -= SoftMax.Apply(odds, _rows.Truth[row]);
            if (bend)
            {
                for (int a = 0; a < odds.Length; a++)
                {
                    odds[a] *= 1 - odds[a];
                }
            }
            else
            {
                odds[_rows.Truth[row]] -= 1;
            }

            Add(row, odds, sum, bend);
        }

        return loss;
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Scores(int row, double[] weights, Span<double> odds)
    {
        int[] allowed = _rows.Allowed[row];
        odds.Clear();
        foreach (DesignEntry entry in _rows.Entries.AsSpan(_rows.Starts[row].._rows.Starts[row + 1]))
        {
            if (entry.Weight >= 0)
            {
                VectorOps.AddScaled(odds, weights.AsSpan(entry.Weight, odds.Length), entry.Value);
                continue;
            }

            ReadOnlySpan<double> all = weights.AsSpan(~entry.Weight, _needs);
            for (int a = 0; a < odds.Length; a++)
            {
                odds[a] += entry.Value * all[allowed[a]];
            }
        }

        foreach (DesignSingle single in _rows.Singles.AsSpan(_rows.SingleStarts[row].._rows.SingleStarts[row + 1]))
        {
            odds[single.Need] += single.Value * weights[single.Weight];
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Add(int row, ReadOnlySpan<double> parts, double[] sum, bool squared)
    {
        int[] allowed = _rows.Allowed[row];
        foreach (DesignEntry entry in _rows.Entries.AsSpan(_rows.Starts[row].._rows.Starts[row + 1]))
        {
            double value = squared ? entry.Value * entry.Value : entry.Value;
            if (entry.Weight >= 0)
            {
                VectorOps.AddScaled(sum.AsSpan(entry.Weight, parts.Length), parts, value);
                continue;
            }

            Span<double> all = sum.AsSpan(~entry.Weight, _needs);
            for (int a = 0; a < parts.Length; a++)
            {
                all[allowed[a]] += value * parts[a];
            }
        }

        foreach (DesignSingle single in _rows.Singles.AsSpan(_rows.SingleStarts[row].._rows.SingleStarts[row + 1]))
        {
            sum[single.Weight] += (squared ? single.Value * single.Value : single.Value) * parts[single.Need];
        }
    }
}
