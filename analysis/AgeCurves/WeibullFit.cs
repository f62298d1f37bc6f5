using PartsSignal.Analysis.Statistics;
using PartsSignal.Analysis.Statistics.Numerics;

namespace PartsSignal.Analysis.AgeCurves;

/// <summary>A Weibull life fitted by maximum likelihood, or the reason why it cannot be.</summary>
/// <param name="Failures">Failures the fit rests on.</param>
/// <param name="Shape">Shape with its 95 % profile interval.</param>
/// <param name="Scale">Scale with its 95 % profile interval, in the unit of the ages.</param>
/// <param name="Life">The fitted life; null when refused.</param>
/// <param name="LogLikelihood">At the maximum; null when refused.</param>
/// <param name="Covariance">Of the logs of shape and scale, from the curvature at the maximum; null when refused.</param>
public sealed record WeibullFit(
    long Failures, Estimate Shape, Estimate Scale, WeibullLife? Life, double? LogLikelihood, LogCovariance? Covariance)
{
    /// <summary>Fewest failures for a fit.</summary>
    public const int FewestFailures = 3;

    /// <summary>Why there is no fit; null when there is one.</summary>
    public string? Missing => Shape.Missing;

    /// <summary>Rows that were left out, each with its place in the input and the reason.</summary>
    public IReadOnlyList<BadRow> Rejected { get; private init; } = [];

    /// <summary>
    /// Right-censored ages with late entry: log L = sum over failures of log h(x) - sum H(exit) + sum H(entry)
    /// (Hong, Meeker and McCalley 2009).
    /// </summary>
    public static WeibullFit FromLedger(AgeLedger ledger) => Fit(ledger.Failures, Best(ledger)) with { Rejected = ledger.Rejected };

    /// <summary>The life of <see cref="FromLedger"/> alone: its intervals take many times as long. Null when refused.</summary>
    internal static WeibullLife? LifeOf(AgeLedger ledger) => Best(ledger).Life;

    private static Maximum Best(AgeLedger ledger)
    {
        (double Age, long Count)[] exact = [.. ledger.Rows.Where(r => r.Failures > 0).Select(r => (r.Age, r.Failures))];
        double exposure = ledger.Rows.Sum(r => r.Age * (r.Exits - r.Entries));
        return Best(ledger.Failures, exact.Length, exposure, ledger.Units, unit => new WeibullTerms(
            exact, ledger.Rows.Select(r => (r.Age, (double)(r.Entries - r.Exits))), [], unit));
    }

    /// <summary>
    /// Ages of failures that are known only because they fell into the time of the log:
    /// L = product f(x)/(F(latest) - F(earliest)) (Ye and Tang 2016). The scale is often not identified by such data;
    /// the fit is then refused. Failures with a fault are left out and listed in <see cref="Rejected"/>.
    /// </summary>
    public static WeibullFit FromTruncated(IReadOnlyList<TruncatedAge> failures)
    {
        (IReadOnlyList<TruncatedAge> good, IReadOnlyList<BadRow> bad) = BadRow.Split(failures, f => f.Fault());
        return FromGood(good) with { Rejected = bad };
    }

    private static WeibullFit FromGood(IReadOnlyList<TruncatedAge> failures)
    {
        (double Age, long Count)[] exact = [.. failures.GroupBy(f => f.Age).OrderBy(g => g.Key).Select(g => (g.Key, g.LongCount()))];
        return Fit(failures.Count, Best(failures.Count, exact.Length, failures.Sum(f => f.Age), failures.Count, unit => new WeibullTerms(
            exact,
            failures.Select(f => (f.Age, -1.0)).Concat(failures.Select(f => (f.Earliest, 1.0))),
            failures.Select(f => (f.Earliest, f.Latest, -1.0)),
            unit)));
    }

    private static Maximum Best(long failures, int distinct, double exposure, long units, Func<double, WeibullTerms> terms)
    {
        if (failures < FewestFailures)
        {
            return new Maximum(failures == 0 ? "nothing has failed yet" : $"fewer than {FewestFailures} failures");
        }

        if (distinct < 2)
        {
            return new Maximum("all failures are at one age: the shape is not identified");
        }

        WeibullTerms sum = terms(exposure / units);
        Peak? peak = WeibullMaximum.Find(sum, 0, Math.Log((double)units / failures));
        double determinant = peak is null ? 0 : peak.At.ByShapeShape * peak.At.ByScaleScale - peak.At.ByShapeScale * peak.At.ByShapeScale;
        return peak is null || determinant <= 1e-12 || peak.At.ByShapeShape >= 0
            ? new Maximum("no best fit: the ages do not tell shape from scale")
            : new Maximum(null, sum, peak, determinant);
    }

    private static WeibullFit Fit(long failures, Maximum best) => best is not { Sum: { } sum, Peak: { } peak }
        ? new(failures, Estimate.None(best.Missing!), Estimate.None(best.Missing!), null, null, null)
        : new(
            failures,
            Exponential(peak.LogShape, WeibullProfile.Interval(sum, peak, ofShape: true), 1),
            Exponential(peak.LogScale, WeibullProfile.Interval(sum, peak, ofShape: false), sum.Unit),
            best.Life,
            peak.At.Value + sum.LogJacobian,
            new LogCovariance(-peak.At.ByScaleScale / best.Determinant, peak.At.ByShapeScale / best.Determinant, -peak.At.ByShapeShape / best.Determinant));

    private static Estimate Exponential(double log, (double? Lower, double? Upper) ends, double unit) =>
        Estimate.From(Math.Exp(log) * unit, ends.Lower is { } l ? Math.Exp(l) * unit : null, ends.Upper is { } u ? Math.Exp(u) * unit : null);

    // The highest likelihood, or why there is none.
    private sealed record Maximum(string? Missing, WeibullTerms? Sum = null, Peak? Peak = null, double Determinant = 0)
    {
        public WeibullLife? Life => Sum is null || Peak is null ? null : new WeibullLife(Math.Exp(Peak.LogShape), Math.Exp(Peak.LogScale) * Sum.Unit);
    }
}

/// <summary>Variances and covariance of the logs of shape and scale.</summary>
public sealed record LogCovariance(double Shape, double Both, double Scale);

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
