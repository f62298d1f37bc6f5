using PartsSignal.Analysis.Statistics.Distributions;

namespace PartsSignal.Analysis.Statistics.Intervals;

/// <summary>
/// Events per unit of exposure. Right for events that come one by one; where single units bring several, the interval is
/// too narrow.
/// </summary>
public static class EventRate
{
    /// <summary>
    /// Garwood's (1936) exact interval: gamma quantiles with shapes x and x + 1 over the exposure; lower end 0 at x = 0.
    /// </summary>
    /// <param name="events">Count, 0 or more.</param>
    /// <param name="exposure">For example unit-years; 0: no rate, and the reason says why.</param>
    /// <param name="confidence">Above 0, below 1.</param>
    public static Estimate Garwood(long events, double exposure, double confidence = 0.95)
    {
        if (Missing(events, exposure) is { } reason)
        {
            return Estimate.None(reason);
        }

        double tail = (1 - confidence) / 2;
        double lower = events == 0 ? 0 : new GammaDistribution(events, exposure).Quantile(tail);
        return Estimate.From(events / exposure, lower, new GammaDistribution(events + 1, exposure).Quantile(1 - tail));
    }

    /// <summary>Jeffreys: quantiles of Gamma(x + 1/2, exposure); lower end 0 at x = 0.</summary>
    public static Estimate Jeffreys(long events, double exposure, double confidence = 0.95)
    {
        if (Missing(events, exposure) is { } reason)
        {
            return Estimate.None(reason);
        }

        var gamma = new GammaDistribution(events + 0.5, exposure);
        double tail = (1 - confidence) / 2;
        return Estimate.From(events / exposure, events == 0 ? 0 : gamma.Quantile(tail), gamma.Quantile(1 - tail));
    }

    /// <summary>Garwood's interval of each row. A row with a fault has no rate; the reason names the row and the fault.</summary>
    /// <param name="rows">Events and exposure.</param>
    /// <param name="confidence">Above 0, below 1.</param>
    public static IReadOnlyList<Estimate> Garwood(IReadOnlyList<(long Events, double Exposure)> rows, double confidence = 0.95) =>
        [.. rows.Select((r, i) => Fault(r.Events, r.Exposure) is { } fault ? Estimate.None($"row {i}: {fault}") : Garwood(r.Events, r.Exposure, confidence))];

    private static string? Fault(long events, double exposure) =>
        events < 0 ? "the count of events is below 0"
        : !(exposure >= 0 && double.IsFinite(exposure)) ? "the exposure is missing or below 0"
        : null;

    private static string? Missing(long events, double exposure)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(events);
        if (!(exposure >= 0 && double.IsFinite(exposure)))
        {
            throw new ArgumentOutOfRangeException(nameof(exposure), exposure, "Exposure is finite and not negative.");
        }

        return exposure > 0 ? null : events > 0 ? "events without exposure" : "no exposure";
    }
}
