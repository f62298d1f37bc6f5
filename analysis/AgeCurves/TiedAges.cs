namespace PartsSignal.Analysis.AgeCurves;

/// <summary>
/// Ages that arithmetic alone sets apart are one age: 182 / 365.25 and 0.4982888 are the same day. Two ages closer
/// than a millionth of themselves are tied; a tied group takes its smallest value.
/// </summary>
internal sealed class TiedAges
{
    /// <summary>Share of an age below which a difference is arithmetic: half a minute in a year.</summary>
    public const double Tolerance = 1e-6;

    private readonly double[] _distinct;

    private TiedAges(double[] distinct) => _distinct = distinct;

    /// <summary>Finds the ties among all ages that will be compared: entries, exits and failures together.</summary>
    public static TiedAges Among(IEnumerable<double> ages)
    {
        double[] sorted = [.. ages.Where(double.IsFinite)];
        Array.Sort(sorted);
        int kept = 0;
        for (int i = 0; i < sorted.Length; i++)
        {
            if (kept == 0 || sorted[i] - sorted[kept - 1] > Tolerance * Math.Abs(sorted[i]))
            {
                sorted[kept++] = sorted[i];
            }
        }

        return new TiedAges(sorted[..kept]);
    }

    /// <summary>The age that stands for all ages tied with this one.</summary>
    /// <param name="age">One of the ages given to <see cref="Among"/>; any other comes back unchanged.</param>
    public double Snap(double age)
    {
        int at = Array.BinarySearch(_distinct, age);
        if (at >= 0)
        {
            return age;
        }

        int below = ~at - 1;
        return below >= 0 && age - _distinct[below] <= Tolerance * Math.Abs(age) ? _distinct[below] : age;
    }
}
