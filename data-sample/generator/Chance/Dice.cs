namespace PartsSignal.SampleShop.Chance;

/// <summary>
/// SplitMix64 (Steele, Lea and Flood, 2014): the same seed gives the same numbers on every machine and runtime.
/// </summary>
internal sealed class Dice
{
    private ulong _state;

    public Dice(ulong seed) => _state = seed;

    /// <summary>A generator of its own for a named purpose, so that a change in one place leaves the others alone.</summary>
    public static Dice For(long seed, string purpose, int number = 0)
    {
        ulong mixed = (ulong)seed * 0x9E3779B97F4A7C15UL;
        foreach (char c in purpose)
        {
            mixed = (mixed ^ c) * 0x100000001B3UL;
        }

        var dice = new Dice(mixed ^ ((ulong)number * 0xD1B54A32D192ED03UL));
        dice.Next();
        return dice;
    }

    public ulong Next()
    {
        ulong z = _state += 0x9E3779B97F4A7C15UL;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
        return z ^ (z >> 31);
    }

    /// <summary>Uniform, at least 0 and below 1.</summary>
    public double Uniform() => (Next() >> 11) * (1.0 / (1UL << 53));

    /// <summary>Whole number from 0 to <paramref name="count"/> - 1.</summary>
    public int Below(int count) => (int)(Uniform() * count);

    /// <summary>Whole number from <paramref name="low"/> to <paramref name="high"/>, both possible.</summary>
    public int Between(int low, int high) => low + Below(high - low + 1);

    public bool Chance(double probability) => Uniform() < probability;

    /// <summary>Exponential with mean 1.</summary>
    public double Exponential() => -ExactMath.Log(1 - Uniform());

    /// <summary>Standard normal, by the polar method (Marsaglia and Bray, 1964).</summary>
    public double Normal()
    {
        while (true)
        {
            double u = (2 * Uniform()) - 1;
            double v = (2 * Uniform()) - 1;
            double s = (u * u) + (v * v);
            if (s is > 0 and < 1)
            {
                return u * Math.Sqrt(-2 * ExactMath.Log(s) / s);
            }
        }
    }

    public double LogNormal(double median, double spread) => median * ExactMath.Exp(spread * Normal());

    public double Weibull(double shape, double scale) => scale * ExactMath.Pow(Exponential(), 1 / shape);

    public T Pick<T>(IReadOnlyList<T> items) => items[Below(items.Count)];

    /// <summary>Index drawn in proportion to the weights, which need not sum to 1.</summary>
    public int Weighted(ReadOnlySpan<double> weights)
    {
        double total = 0;
        foreach (double w in weights)
        {
            total += w;
        }

        double at = Uniform() * total;
        for (int i = 0; i < weights.Length; i++)
        {
            at -= weights[i];
            if (at < 0)
            {
                return i;
            }
        }

        return weights.Length - 1;
    }
}
