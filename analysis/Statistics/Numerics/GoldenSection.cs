namespace PartsSignal.Analysis.Statistics.Numerics;

/// <summary>Finds the lowest point of a function with one valley.</summary>
internal static class GoldenSection
{
    private static readonly double Golden = (Math.Sqrt(5) - 1) / 2;

    /// <summary>Golden-section search (Kiefer 1953).</summary>
    /// <param name="function">The function; finite on the interval.</param>
    /// <param name="from">Lower end.</param>
    /// <param name="to">Upper end, above <paramref name="from"/>.</param>
    /// <param name="steps">Number of steps; each shortens the interval to 0.618 of itself.</param>
    public static double Minimize(Func<double, double> function, double from, double to, int steps = 40)
    {
        double a = to - Golden * (to - from), b = from + Golden * (to - from);
        double atA = function(a), atB = function(b);
        for (int i = 0; i < steps; i++)
        {
            if (atA <= atB)
            {
                (to, b, atB) = (b, a, atA);
                a = to - Golden * (to - from);
                atA = function(a);
            }
            else
            {
                (from, a, atA) = (a, b, atB);
                b = from + Golden * (to - from);
                atB = function(b);
            }
        }

        return (from + to) / 2;
    }
}
