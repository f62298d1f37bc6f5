using System.Globalization;
using PartsSignal.Analysis.Statistics;

namespace PartsSignal.Analysis.AgeCurves;

/// <summary>A curve of registered appliances: late entry and untold failures allowed for, conditional where the young ages are thin.</summary>
internal static class RegisterCurve
{
    private const double Grid = 0.25;

    /// <summary>The figures of one curve.</summary>
    /// <param name="key">Which curve.</param>
    /// <param name="ledger">Its counts, ages in years.</param>
    /// <param name="others">Counts of the type's other families, or null if not compared.</param>
    /// <param name="untold">What jobs that do not tell their machine may add.</param>
    /// <param name="shape">Shape of the component's life in this type, by its own time in service (<see cref="PartLife"/>).</param>
    public static (AgeCurveSummary Summary, IReadOnlyList<AgeCurvePoint> Points) Fit(CurveKey key, AgeLedger ledger, AgeLedger? others, UntoldFactor untold, Estimate shape)
    {
        double? start = ConditionalStart.Find(ledger);
        string? condition = start is { } s ? string.Create(CultureInfo.InvariantCulture, $"given that it reached {s:0.00} years") : null;
        KaplanMeier curve = KaplanMeier.Estimate(ledger, start).With(untold);
        LifeQuantile median = LifeQuantile.Median(curve);
        double? horizon = RestrictedMeanLife.LastSteadyAge(ledger) is { } h && h > (start ?? 0) ? h : null;
        LogRankTest? test = others is null ? null : LogRank.Compare([ledger, others]);
        var summary = new AgeCurveSummary(
            key.ApplianceType, key.Component, key.ModelFamily, CurveBasis.Register, condition, ledger.Units, ledger.Failures,
            median.Age, median.Lower, median.Upper, median.Missing,
            horizon is { } end ? RestrictedMeanLife.WithError(curve, end).Area : null, horizon,
            shape.Value, shape.Lower, shape.Upper, AgeCurveSummary.NatureOf(shape), shape.Missing,
            test?.P, test is { P: not null } t && t.Expected[0] > 0 ? t.Observed[0] / t.Expected[0] : null,
            curve.Points.Count == 0 ? "nothing has failed at an age with enough at risk" : null);
        if (summary is { OthersRatio: { } ratio, OthersP: { } p } && AgeCurveSummary.TestBased(ratio, p) is { } limits)
        {
            summary = summary with { OthersLower = limits.Lower, OthersUpper = limits.Upper };
        }

        return (summary, Points(key, condition, curve, untold, WeibullFit.LifeOf(ledger)));
    }

    private static List<AgeCurvePoint> Points(CurveKey key, string? condition, KaplanMeier curve, UntoldFactor untold, WeibullLife? life)
    {
        var points = new List<AgeCurvePoint>();
        if (curve.Points.Count == 0)
        {
            return points;
        }

        double start = curve.Start ?? 0;
        IReadOnlyList<HazardPoint> hazards = NelsonAalen.Estimate(curve.Ledger, start: curve.Start);
        int step = 0;
        long failures = 0;
        double last = Math.Ceiling(curve.Points[^1].Age / Grid) * Grid;
        for (double age = Math.Ceiling(start / Grid) * Grid; age <= last; age += Grid)
        {
            for (; step < curve.Points.Count && curve.Points[step].Age <= age; step++)
            {
                failures += curve.Points[step].Failures;
            }

            SurvivalPoint? at = step == 0 ? null : curve.Points[step - 1];
            points.Add(new AgeCurvePoint(
                key.ApplianceType, key.Component, key.ModelFamily, CurveBasis.Register, condition, age,
                at?.AtRisk, failures, at is null ? 0 : 1 - at.Survival, at is null ? 0 : 1 - at.Upper, at is null ? 0 : 1 - at.Lower,
                at is null ? 0 : untold.Expected * hazards[step - 1].CumulativeHazard,
                life is null ? null : 1 - Math.Pow(life.Survival(age) / life.Survival(start), untold.Expected)));
        }

        return points;
    }
}
