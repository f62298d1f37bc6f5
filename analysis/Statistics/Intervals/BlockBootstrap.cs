namespace PartsSignal.Analysis.Statistics.Intervals;

/// <summary>
/// Percentile intervals by drawing whole blocks with replacement (Carlstein 1986, blocks that do not overlap). Jobs of
/// one week share weather, staff and stock, so drawing single jobs would make the intervals too narrow.
/// </summary>
internal sealed class BlockBootstrap
{
    private readonly int[][] _draws;

    /// <param name="blocks">Blocks there are.</param>
    /// <param name="draws">How many samples of that many blocks; at least one.</param>
    /// <param name="seed">The same seed draws the same blocks for every figure, so that figures can be compared.</param>
    public BlockBootstrap(int blocks, int draws, int seed)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(blocks, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(draws, 1);
        var random = new Random(seed);
        _draws = [.. Enumerable.Range(0, draws).Select(_ => Enumerable.Range(0, blocks).Select(_ => random.Next(blocks)).ToArray())];
    }

    /// <summary>The middle 95 % of a figure over the samples.</summary>
    /// <param name="figure">The figure of one sample, given as the indices of its blocks.</param>
    public (double Lower, double Upper) Interval(Func<int[], double> figure) => Middle([.. _draws.Select(figure)]);

    /// <summary>The middle 95 % of a mean over the samples.</summary>
    /// <param name="blocks">Sum and number of cases of each block.</param>
    /// <param name="own">The mean of all cases; also that of a sample without cases.</param>
    public (double Lower, double Upper) Mean(IReadOnlyList<(double Sum, double Cases)> blocks, double own) => Interval(draw =>
    {
        (double sum, double cases) = (0, 0);
        foreach (int block in draw)
        {
            sum += blocks[block].Sum;
            cases += blocks[block].Cases;
        }

        return cases > 0 ? sum / cases : own;
    });

    /// <summary>
    /// The 2.5 % and 97.5 % quantile of some values: the order statistics at 0.025 (n - 1) and 0.975 (n - 1) from 0,
    /// rounded outward, so that at least 95 % of the values lie within.
    /// </summary>
    internal static (double Lower, double Upper) Middle(double[] values)
    {
        Array.Sort(values);
        int cut = (int)Math.Floor(0.025 * (values.Length - 1));
        return (values[cut], values[^(cut + 1)]);
    }
}
