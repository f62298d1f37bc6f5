using PartsSignal.Analysis.Statistics.Numerics;

namespace PartsSignal.Analysis.AgeCurves;

/// <summary>A Weibull life: H(t) = (t/scale)^shape failures expected by age t (Weibull 1951).</summary>
/// <param name="Shape">Below 1: early failures; about 1: chance; above 1: wear. Greater than 0.</param>
/// <param name="Scale">Age by which 63 % have failed; greater than 0, in the unit of the ages.</param>
public sealed record WeibullLife(double Shape, double Scale)
{
    /// <summary>Expected failures by an age, were each replaced by one as old.</summary>
    public double CumulativeHazard(double age) => age <= 0 ? 0 : Math.Pow(age / Scale, Shape);

    /// <summary>Failures per unit of time among those that reached an age above 0.</summary>
    public double Hazard(double age) => Shape / Scale * Math.Pow(age / Scale, Shape - 1);

    /// <summary>Share still working at an age.</summary>
    public double Survival(double age) => Math.Exp(-CumulativeHazard(age));

    /// <summary>Chance that one still working at an age fails within the horizon: 1 - exp(H(age) - H(age + horizon)).</summary>
    public double ChanceWithin(double age, double horizon) => -Expm1(CumulativeHazard(age) - CumulativeHazard(age + horizon));

    /// <summary>The age by which a share has failed.</summary>
    /// <param name="failed">Between 0 and 1, ends excluded.</param>
    public double Quantile(double failed) => Scale * Math.Pow(-Math.Log(1 - failed), 1 / Shape);

    /// <summary>Mean life.</summary>
    public double Mean => Scale * GammaFunction.Value(1 + 1 / Shape);

    /// <summary>exp(x) - 1 without loss of digits near 0.</summary>
    internal static double Expm1(double x) => Math.Abs(x) < 1e-5 ? x + x * x / 2 + x * x * x / 6 : Math.Exp(x) - 1;
}
