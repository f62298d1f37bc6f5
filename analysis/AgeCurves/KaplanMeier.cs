using PartsSignal.Analysis.Statistics;

namespace PartsSignal.Analysis.AgeCurves;

/// <summary>One step of a survival curve.</summary>
/// <param name="Age">Age of the failures.</param>
/// <param name="AtRisk">Appliances at risk at this age.</param>
/// <param name="Failures">Failures at this age.</param>
/// <param name="Survival">Share still working just after this age, 0 to 1.</param>
/// <param name="StandardError">Of Survival; null when all at risk failed.</param>
/// <param name="Lower">Lower end of the 95 % interval; null when there is none.</param>
/// <param name="Upper">Upper end of the 95 % interval; null when there is none.</param>
public sealed record SurvivalPoint(double Age, long AtRisk, long Failures, double Survival, double? StandardError, double? Lower, double? Upper);

/// <summary>
/// The product-limit curve of ages at failure (Kaplan and Meier 1958): S(t) = product over failure ages up to t of
/// (1 - d/n). Variance S^2 sum d/(n(n-d)) (Greenwood 1926). Those whose watching ends at a failure's age are at risk
/// at it. Watching that begins late is allowed for.
/// </summary>
public sealed record KaplanMeier
{
    private KaplanMeier(IReadOnlyList<SurvivalPoint> points, AgeLedger ledger, double? start) =>
        (Points, Ledger, Start) = (points, ledger, start);

    /// <summary>Steps by age; empty when nothing failed.</summary>
    public IReadOnlyList<SurvivalPoint> Points { get; }

    /// <summary>The counts the curve rests on.</summary>
    public AgeLedger Ledger { get; }

    /// <summary>Spans that were left out, each with its place in the input and the reason.</summary>
    public IReadOnlyList<BadRow> Rejected => Ledger.Rejected;

    /// <summary>Survival is given that this age was reached, or null to start from the beginning.</summary>
    public double? Start { get; }

    /// <summary>Estimates the curve. Spans that cannot be used are left out and listed in <see cref="Rejected"/>.</summary>
    /// <param name="spans">One per appliance; any cause counts as a failure.</param>
    public static KaplanMeier Estimate(IReadOnlyList<AgeSpan> spans) => Estimate(AgeLedger.From(spans));

    /// <summary>Estimates the curve.</summary>
    /// <param name="ledger">Counts by age.</param>
    /// <param name="start">Give survival conditional on reaching this age (see <see cref="ConditionalStart"/>), or null to start from the beginning.</param>
    public static KaplanMeier Estimate(AgeLedger ledger, double? start = null)
    {
        var points = new List<SurvivalPoint>();
        double survival = 1;
        double greenwood = 0;
        foreach (RiskSet set in ledger.RiskSets(start))
        {
            long working = set.AtRisk - set.Failures;
            survival *= (double)working / set.AtRisk;
            greenwood += working == 0 ? 0 : set.Failures / ((double)set.AtRisk * working);
            double? error = survival > 0 ? survival * Math.Sqrt(greenwood) : null;
            (double Lower, double Upper)? interval = Interval95.LogLog(survival, error);
            points.Add(new SurvivalPoint(set.Age, set.AtRisk, set.Failures, survival, error, interval?.Lower, interval?.Upper));
        }

        return new KaplanMeier(points, ledger, start);
    }

    /// <summary>
    /// The curve were the failures counted whose jobs do not tell the machine: a rate of failure f times as high leaves the
    /// share S^f. The interval runs from the upper end with none of them to the lower end with all of them.
    /// </summary>
    /// <param name="untold">How much more often it fails.</param>
    internal KaplanMeier With(UntoldFactor untold) => untold == UntoldFactor.None ? this : new KaplanMeier(
        [.. Points.Select(p => p with
        {
            Survival = Math.Pow(p.Survival, untold.Expected),
            StandardError = p.StandardError * untold.Expected * Math.Pow(p.Survival, untold.Expected - 1),
            Lower = p.Lower is { } lower ? Math.Pow(lower, untold.Most) : null,
        })],
        Ledger,
        Start);

    /// <summary>Share still working just after an age.</summary>
    public double SurvivalAt(double age)
    {
        double survival = 1;
        foreach (SurvivalPoint point in Points)
        {
            if (point.Age > age)
            {
                break;
            }

            survival = point.Survival;
        }

        return survival;
    }
}
