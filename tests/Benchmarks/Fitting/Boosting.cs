using PartsSignal.Pipeline.Understanding;

namespace PartsSignal.Benchmarks.Fitting;

/// <summary>How a model is fitted.</summary>
/// <param name="Rounds">Number of trees.</param>
/// <param name="Depth">Questions of a tree.</param>
/// <param name="Rate">Share of each step that is taken.</param>
/// <param name="Ridge">Rows' worth of doubt added to each leaf.</param>
/// <param name="Kept">Share of the features that each level may ask about.</param>
public sealed record BoostingOptions(int Rounds, int Depth = 3, double Rate = 0.12, double Ridge = 3, double Kept = 0.5);

/// <summary>
/// Fits a sum of small trees by gradient boosting with the log loss (Friedman 2001), second order (Chen and Guestrin
/// 2016), every level of a tree one question (Prokhorenkova et al. 2018). Levels are whole numbers, leaves are rounded
/// to thousandths, and what a level may ask is drawn from a fixed seed.
/// </summary>
internal static class Boosting
{
    /// <summary>Fits the model.</summary>
    /// <param name="rows">Levels of each row.</param>
    /// <param name="labels">1 or 0.</param>
    /// <param name="weights">Weight of each row.</param>
    /// <param name="start">Log odds to start from, in thousandths; null: the share of ones.</param>
    /// <param name="options">How.</param>
    public static TreeModel Fit(IReadOnlyList<byte[]> rows, bool[] labels, double[] weights, int[]? start, BoostingOptions options)
    {
        int n = rows.Count;
        int features = n == 0 ? 0 : rows[0].Length;
        double ones = 0.5, all = 1;
        for (int i = 0; i < n; i++)
        {
            ones += labels[i] ? weights[i] : 0;
            all += weights[i];
        }

        int bias = start is null ? (int)Math.Round(1000 * Math.Log(ones / (all - ones + 0.5))) : 0;
        int[] score = [.. Enumerable.Range(0, n).Select(i => (start?[i] ?? 0) + bias)];
        byte[][] columns = [.. Enumerable.Range(0, features).Select(f => rows.Select(r => r[f]).ToArray())];
        int[] useful = [.. Enumerable.Range(0, features).Where(f => columns[f].Distinct().Skip(1).Any())];
        var trees = new List<TreeModel.Tree>();
        var gradient = new double[n];
        var curve = new double[n];
        var random = new Random(20261129);
        for (int round = 0; round < options.Rounds; round++)
        {
            for (int i = 0; i < n; i++)
            {
                double p = 1 / (1 + Math.Exp(-score[i] / 1000.0));
                gradient[i] = weights[i] * (p - (labels[i] ? 1 : 0));
                curve[i] = weights[i] * Math.Max(p * (1 - p), 1e-4);
            }

            if (Grow(columns, useful, gradient, curve, options, random) is not { } tree)
            {
                break;
            }

            trees.Add(tree);
            for (int i = 0; i < n; i++)
            {
                score[i] += tree.Leaves[LeafOf(columns, tree, i)];
            }
        }

        return new TreeModel(bias, trees);
    }

    private static TreeModel.Tree? Grow(byte[][] columns, int[] useful, double[] gradient, double[] curve, BoostingOptions options, Random random)
    {
        int n = gradient.Length;
        var part = new int[n];
        var asked = new List<int>();
        var cuts = new List<byte>();
        const int Levels = FeatureList.Top + 1;
        double before = Gain(gradient.Sum(), curve.Sum(), options.Ridge);
        for (int depth = 0; depth < options.Depth; depth++)
        {
            int parts = 1 << depth;
            (double Gain, int Feature, byte Cut) best = (before + 1e-6, -1, 0);
            var g = new double[parts * Levels];
            var h = new double[parts * Levels];
            foreach (int f in useful)
            {
                if (random.NextDouble() > options.Kept)
                {
                    continue;
                }

                Array.Clear(g);
                Array.Clear(h);
                byte[] column = columns[f];
                for (int i = 0; i < n; i++)
                {
                    int at = (part[i] * Levels) + column[i];
                    g[at] += gradient[i];
                    h[at] += curve[i];
                }

                for (byte cut = 1; cut < Levels; cut++)
                {
                    double gain = 0;
                    for (int p = 0; p < parts; p++)
                    {
                        double lowG = 0, lowH = 0, highG = 0, highH = 0;
                        for (int level = 0; level < Levels; level++)
                        {
                            if (level < cut)
                            {
                                lowG += g[(p * Levels) + level];
                                lowH += h[(p * Levels) + level];
                            }
                            else
                            {
                                highG += g[(p * Levels) + level];
                                highH += h[(p * Levels) + level];
                            }
                        }

                        gain += Gain(lowG, lowH, options.Ridge) + Gain(highG, highH, options.Ridge);
                    }

                    if (gain > best.Gain)
                    {
                        best = (gain, f, cut);
                    }
                }
            }

            if (best.Feature < 0)
            {
                break;
            }

            before = best.Gain;
            asked.Add(best.Feature);
            cuts.Add(best.Cut);
            for (int i = 0; i < n; i++)
            {
                part[i] |= columns[best.Feature][i] >= best.Cut ? 1 << depth : 0;
            }
        }

        if (asked.Count == 0)
        {
            return null;
        }

        var sumG = new double[1 << asked.Count];
        var sumH = new double[1 << asked.Count];
        for (int i = 0; i < n; i++)
        {
            sumG[part[i]] += gradient[i];
            sumH[part[i]] += curve[i];
        }

        return new TreeModel.Tree([.. asked], [.. cuts], [.. sumG.Zip(sumH).Select(s => (int)Math.Round(-1000 * options.Rate * s.First / (s.Second + options.Ridge)))]);
    }

    private static double Gain(double gradient, double curve, double ridge) => gradient * gradient / (curve + ridge);

    private static int LeafOf(byte[][] columns, TreeModel.Tree tree, int row)
    {
        int leaf = 0;
        for (int i = 0; i < tree.Features.Length; i++)
        {
            leaf |= columns[tree.Features[i]][row] >= tree.Cuts[i] ? 1 << i : 0;
        }

        return leaf;
    }
}
