using System.Numerics;
using System.Runtime.CompilerServices;

namespace PartsSignal.Analysis.Prediction.LogOdds;

/// <summary>Sums over numbers that lie side by side. Every element is rounded as in a plain loop, so the width of the machine's registers does not show.</summary>
internal static class VectorOps
{
    /// <summary>Adds a multiple.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void AddScaled(Span<double> to, ReadOnlySpan<double> what, double scale)
    {
        int j = 0, width = Vector<double>.Count;
        for (; j <= to.Length - width; j += width)
        {
            (new Vector<double>(to[j..]) + scale * new Vector<double>(what[j..])).CopyTo(to[j..]);
        }

        for (; j < to.Length; j++)
        {
            to[j] += scale * what[j];
        }
    }

    /// <summary>Sum of products, in four partial sums whatever the machine.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static double Dot(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        double s0 = 0, s1 = 0, s2 = 0, s3 = 0;
        int j = 0;
        for (; j <= a.Length - 4; j += 4)
        {
            s0 += a[j] * b[j];
            s1 += a[j + 1] * b[j + 1];
            s2 += a[j + 2] * b[j + 2];
            s3 += a[j + 3] * b[j + 3];
        }

        for (; j < a.Length; j++)
        {
            s0 += a[j] * b[j];
        }

        return s0 + s1 + (s2 + s3);
    }
}

/// <summary>Log odds to odds.</summary>
internal static class SoftMax
{
    /// <summary>Turns scores into odds that sum to 1, and returns the log of the odds at <paramref name="at"/>; 0 where that is below 0.</summary>
    public static double Apply(Span<double> scores, int at)
    {
        double top = double.NegativeInfinity;
        foreach (double score in scores)
        {
            top = Math.Max(top, score);
        }

        double sum = 0, own = at >= 0 ? scores[at] - top : 0;
        for (int k = 0; k < scores.Length; k++)
        {
            scores[k] = Math.Exp(scores[k] - top);
            sum += scores[k];
        }

        for (int k = 0; k < scores.Length; k++)
        {
            scores[k] /= sum;
        }

        return at >= 0 ? own - Math.Log(sum) : 0;
    }
}
