using System.Runtime.CompilerServices;

namespace PartsSignal.Analysis.AgeCurves;

/// <summary>
/// A Weibull log likelihood in the logs of shape and scale, put together from three kinds of term, so that right
/// censoring, late entry, interval ages and double truncation are one sum:
/// D (log shape - shape log scale) + (shape - 1) sum log x + sum w H(a) + sum s log(1 - exp(H(lo) - H(hi))).
/// Ages are divided by a typical age first, so that a fit in days is the fit in years.
/// </summary>
internal sealed class WeibullTerms
{
    private readonly double _unit;
    private readonly long _exact;
    private readonly double _sumLogAges;
    private readonly (double LogAge, double Weight)[] _hazards;
    private readonly (double LogLow, double LogHigh, double Sign)[] _spans;

    /// <summary>Collects terms.</summary>
    /// <param name="exact">Ages at failure known exactly, with how often each occurs.</param>
    /// <param name="hazards">Ages at which H counts, with the weight it has.</param>
    /// <param name="spans">Pairs of ages whose probability between them counts, with its sign.</param>
    /// <param name="unit">Typical age, by which all ages are divided.</param>
    public WeibullTerms(
        IReadOnlyCollection<(double Age, long Count)> exact,
        IEnumerable<(double Age, double Weight)> hazards,
        IEnumerable<(double Low, double High, double Sign)> spans,
        double unit)
    {
        _unit = unit;
        _exact = exact.Sum(e => e.Count);
        _sumLogAges = exact.Sum(e => e.Count * Math.Log(e.Age / unit));
        _hazards = [.. hazards.Where(h => h.Age > 0 && h.Weight != 0).Select(h => (Math.Log(h.Age / unit), h.Weight))];
        _spans = [.. spans.Select(s => (Math.Log(s.Low / unit), Math.Log(s.High / unit), s.Sign))];
    }

    /// <summary>Typical age of the sample, in the unit of its ages.</summary>
    public double Unit => _unit;

    /// <summary>What turns a likelihood of scaled ages into one of the ages themselves.</summary>
    public double LogJacobian => -_exact * Math.Log(_unit);

    /// <summary>Value, gradient and curvature at (log shape, log scale), scale in typical ages.</summary>
    public Expansion At(double logShape, double logScale)
    {
        double shape = Math.Exp(logShape);
        var sum = new Expansion(
            _exact * (logShape - shape * logScale) + (shape - 1) * _sumLogAges,
            _exact * (1 - shape * logScale) + shape * _sumLogAges,
            -_exact * shape,
            shape * (_sumLogAges - _exact * logScale),
            -_exact * shape,
            0);
        foreach ((double logAge, double weight) in _hazards)
        {
            sum = sum.Plus(Hazard(shape, logAge - logScale), weight);
        }

        foreach ((double low, double high, double sign) in _spans)
        {
            sum = sum.Plus(LogProbability(shape, low - logScale, high - logScale), sign);
        }

        return sum;
    }

    private static Expansion Hazard(double shape, double logRatio)
    {
        if (double.IsNegativeInfinity(logRatio))
        {
            return default;
        }

        double z = shape * logRatio;
        double h = Math.Exp(z);
        return new Expansion(h, z * h, -shape * h, (z + z * z) * h, -shape * (1 + z) * h, shape * shape * h);
    }

    private static Expansion LogProbability(double shape, double low, double high)
    {
        Expansion d = Hazard(shape, high) + Hazard(shape, low) * -1;
        double lost = -WeibullLife.Expm1(-d.Value);
        double first = Math.Exp(-d.Value) / lost;
        double second = -first / lost;
        return new Expansion(
            Math.Log(lost),
            first * d.ByShape,
            first * d.ByScale,
            second * d.ByShape * d.ByShape + first * d.ByShapeShape,
            second * d.ByShape * d.ByScale + first * d.ByShapeScale,
            second * d.ByScale * d.ByScale + first * d.ByScaleScale);
    }
}

/// <summary>A function of two variables with its first and second derivatives at a point.</summary>
internal readonly record struct Expansion(
    double Value, double ByShape, double ByScale, double ByShapeShape, double ByShapeScale, double ByScaleScale)
{
    public static Expansion operator +(Expansion a, Expansion b) => new(
        a.Value + b.Value, a.ByShape + b.ByShape, a.ByScale + b.ByScale,
        a.ByShapeShape + b.ByShapeShape, a.ByShapeScale + b.ByShapeScale, a.ByScaleScale + b.ByScaleScale);

    public static Expansion operator *(Expansion a, double f) => new(
        a.Value * f, a.ByShape * f, a.ByScale * f, a.ByShapeShape * f, a.ByShapeScale * f, a.ByScaleScale * f);

    /// <summary>a + f b.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Expansion Plus(in Expansion b, double f) => new(
        Value + b.Value * f, ByShape + b.ByShape * f, ByScale + b.ByScale * f,
        ByShapeShape + b.ByShapeShape * f, ByShapeScale + b.ByShapeScale * f, ByScaleScale + b.ByScaleScale * f);
}
