using PartsSignal.Analysis.Statistics;

namespace PartsSignal.Analysis.AgeCurves;

/// <summary>
/// Mean working life within a horizon: the area under the survival curve up to it. Says something where the median
/// is not reached. Variance: sum over steps of (area from the step to the horizon)^2 d/(n(n-d)) (Irwin 1949).
/// </summary>
internal static class RestrictedMeanLife
{
    /// <summary>Fewest appliances at risk at the horizon of <see cref="LastSteadyAge"/>.</summary>
    public const int FewestAtRisk = 5;

    /// <summary>The area up to a horizon with its 95 % interval, in the curve's unit of time.</summary>
    /// <param name="curve">A survival curve.</param>
    /// <param name="horizon">Age up to which life is counted; beyond the curve's start.</param>
    public static Estimate From(KaplanMeier curve, double horizon)
    {
        (double area, double error) = WithError(curve, horizon);
        return Estimate.From(area, Math.Max(0, area - Interval95.Z * error), Math.Min(horizon, area + Interval95.Z * error));
    }

    /// <summary>The area up to a horizon and its standard error.</summary>
    public static (double Area, double StandardError) WithError(KaplanMeier curve, double horizon)
    {
        double start = curve.Start ?? 0;
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(horizon, start);
        SurvivalPoint[] steps = [.. curve.Points.Where(p => p.Age < horizon)];
        double tail = 0;
        double variance = 0;
        double end = horizon;
        for (int i = steps.Length - 1; i >= 0; i--)
        {
            SurvivalPoint step = steps[i];
            tail += step.Survival * (end - step.Age);
            end = step.Age;
            long working = step.AtRisk - step.Failures;
            if (working > 0)
            {
                variance += tail * tail * step.Failures / ((double)step.AtRisk * working);
            }
        }

        return (tail + (end - start), Math.Sqrt(variance));
    }

    /// <summary>The last age at which at least <paramref name="fewest"/> are at risk: how far a mean can be told. Null: nowhere.</summary>
    public static double? LastSteadyAge(AgeLedger ledger, int fewest = FewestAtRisk)
    {
        long present = 0;
        double? last = null;
        foreach (AgeLedgerRow row in ledger.Rows)
        {
            last = present >= fewest ? row.Age : last;
            present += row.Entries - row.Exits;
        }

        return last;
    }
}
