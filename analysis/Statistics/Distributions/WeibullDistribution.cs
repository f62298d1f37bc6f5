namespace PartsSignal.Analysis.Statistics.Distributions;

/// <summary>Weibull life: P(T &gt; t) = exp(-(t / scale)^shape).</summary>
public sealed record WeibullDistribution
{
    /// <summary>A distribution; both parameters finite and above 0.</summary>
    public WeibullDistribution(double shape, double scale) =>
        (Shape, Scale) = (Probability.Positive(shape, nameof(shape)), Probability.Positive(scale, nameof(scale)));

    /// <summary>Shape: below 1 early failures, 1 chance, above 1 wear.</summary>
    public double Shape { get; }

    /// <summary>Scale, in the unit of time: 63.2 % have failed by then.</summary>
    public double Scale { get; }

    /// <summary>(t / scale)^shape; 0 for t below 0.</summary>
    public double CumulativeHazard(double t) => t <= 0 ? 0 : Math.Pow(t / Scale, Shape);

    /// <summary>P(T &gt; t).</summary>
    public double Survival(double t) => Math.Exp(-CumulativeHazard(t));

    /// <summary>P(T &lt;= t).</summary>
    public double Cdf(double t)
    {
        double h = CumulativeHazard(t);
        return h < 1e-5 ? h - (h * h / 2) : 1 - Math.Exp(-h);
    }

    /// <summary>The t with P(T &lt;= t) = p; infinity at p = 1.</summary>
    public double Quantile(double p) => Probability.Check(p) == 1
        ? double.PositiveInfinity
        : Scale * Math.Pow(p < 1e-5 ? p + (p * p / 2) : -Math.Log(1 - p), 1 / Shape);

    /// <summary>P(T &lt;= age + ahead | T &gt; age).</summary>
    public double ChanceWithin(double age, double ahead) =>
        1 - Math.Exp(CumulativeHazard(age) - CumulativeHazard(age + ahead));
}
