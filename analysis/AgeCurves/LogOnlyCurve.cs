using System.Globalization;

namespace PartsSignal.Analysis.AgeCurves;

/// <summary>
/// At which ages the failures came that the shop was called to, from the job log alone. A plain count of logged ages is
/// wrong in both directions, so it is corrected for the ages the log could not see. It is no life: how many fail at all is
/// not in a log, so there is neither a scale nor a median life.
/// </summary>
/// <remarks>
/// Two biases remain, and they pull in opposite directions. An earlier repair that the shop never saw makes a unit's first
/// logged failure a later one: ages look too high. A unit that was scrapped, or whose owner called elsewhere, can show no
/// late failure: ages look too low. Their size is not in a log.
/// </remarks>
internal static class LogOnlyCurve
{
    private const double Grid = 0.25;
    private const string NoLife = "a job log does not show how many never fail";

    /// <summary>The figures of one curve, or the reason why there is none.</summary>
    public static (AgeCurveSummary Summary, IReadOnlyList<AgeCurvePoint> Points) Fit(
        CurveKey key, IReadOnlyList<TruncatedAge> failures, LogOnlyOptions options)
    {
        if (failures.Count < options.Fewest)
        {
            return (Summary(key, null, failures, [], WeibullFit.FromTruncated([]), $"fewer than {options.Fewest} failures"), []);
        }

        WeibullFit fit = WeibullFit.FromTruncated(failures);
        TruncatedDistribution? free = failures.Count >= options.FewestFree ? DoublyTruncated.EstimateComparable(failures) : null;
        (double from, double until) = free is { Missing: null } ? (free.From, free.Until) : (0, failures.Max(f => f.Latest));
        string condition = from > 0
            ? string.Create(CultureInfo.InvariantCulture, $"of the failures we were called to between {from:0.0} and {until:0.0} years of age")
            : string.Create(CultureInfo.InvariantCulture, $"of the failures we were called to up to {until:0.0} years of age");
        (IReadOnlyList<AgeCurvePoint> points, string? missing) = free is { Missing: null }
            ? (Free(key, condition, free, fit.Life), null)
            : Formed(key, condition, failures, fit, until);
        return (Summary(key, condition, failures, points, fit, missing), points);
    }

    private static List<AgeCurvePoint> Free(CurveKey key, string condition, TruncatedDistribution found, WeibullLife? life)
    {
        var points = new List<AgeCurvePoint>();
        int step = 0;
        long count = 0;
        for (double age = 0; age <= Math.Ceiling(found.Until / Grid) * Grid; age += Grid)
        {
            for (; step < found.Points.Count && found.Points[step].Age <= age; step++)
            {
                count += found.Points[step].Failures;
            }

            TruncatedPoint? at = step == 0 ? null : found.Points[step - 1];
            points.Add(Point(key, condition, age, count, at?.Share ?? 0, at?.Interval, Fitted(life, age, found)));
        }

        return points;
    }

    private static (IReadOnlyList<AgeCurvePoint> Points, string? Missing) Formed(
        CurveKey key, string condition, IReadOnlyList<TruncatedAge> failures, WeibullFit fit, double latest)
    {
        if (fit.Life is null)
        {
            return ([], fit.Missing);
        }

        var points = new List<AgeCurvePoint>();
        for (double age = 0; age <= Math.Ceiling(latest / Grid) * Grid; age += Grid)
        {
            ConditionalShare share = ConditionalShare.From(fit, age, latest);
            points.Add(Point(key, condition, age, failures.Count(f => f.Age <= age), share.Value, share is { Lower: { } l, Upper: { } u } ? (l, u) : null, share.Value));
        }

        return (points, null);
    }

    private static double? Fitted(WeibullLife? life, double age, TruncatedDistribution found)
    {
        if (life is null)
        {
            return null;
        }

        double before = ConditionalShare.Value01(life, found.From, found.Until);
        return Math.Max(0, (ConditionalShare.Value01(life, age, found.Until) - before) / (1 - before));
    }

    private static AgeCurvePoint Point(
        CurveKey key, string condition, double age, long count, double share, (double Lower, double Upper)? interval, double? fitted) => new(
        key.ApplianceType, key.Component, key.ModelFamily, CurveBasis.LogOnly, condition, age,
        null, count, share, interval?.Lower, interval?.Upper, null, fitted);

    private static AgeCurveSummary Summary(
        CurveKey key, string? condition, IReadOnlyList<TruncatedAge> failures, IReadOnlyList<AgeCurvePoint> points, WeibullFit fit, string? missing)
    {
        string? noFit = missing is not null && points.Count == 0 && fit.Failures == 0 ? missing : fit.Missing;
        return new AgeCurveSummary(
            key.ApplianceType, key.Component, key.ModelFamily, CurveBasis.LogOnly, condition, failures.Count, failures.Count,
            null, null, null, NoLife, null, null,
            fit.Shape.Value, fit.Shape.Lower, fit.Shape.Upper, AgeCurveSummary.NatureOf(fit.Shape), noFit, null, null, missing);
    }
}

/// <summary>When a curve may be told from the job log alone.</summary>
/// <param name="Fewest">Fewest failures for any curve.</param>
/// <param name="FewestFree">Fewest failures for a curve without a form; below it a Weibull form is fitted.</param>
public sealed record LogOnlyOptions(int Fewest = 20, int FewestFree = 100);
