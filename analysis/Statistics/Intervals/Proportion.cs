using PartsSignal.Analysis.Statistics.Distributions;

namespace PartsSignal.Analysis.Statistics.Intervals;

/// <summary>Shares of a count of trials with their intervals. No trials: no share.</summary>
public static class Proportion
{
    private const string NoTrials = "no jobs";

    /// <summary>
    /// Wilson's (1927) score interval, the default here: center (p + z^2/2n) / (1 + z^2/n), half-width
    /// z / (1 + z^2/n) sqrt(p(1-p)/n + z^2/4n^2).
    /// </summary>
    public static Estimate Wilson(long successes, long trials, double confidence = 0.95)
    {
        Check(successes, trials);
        if (trials == 0)
        {
            return Estimate.None(NoTrials);
        }

        double z = Z(confidence);
        double n = trials, p = successes / n;
        double scale = 1 / (1 + (z * z / n));
        double center = (p + (z * z / (2 * n))) * scale;
        double half = z * scale * Math.Sqrt((p * (1 - p) / n) + (z * z / (4 * n * n)));
        return Estimate.From(p, successes == 0 ? 0 : center - half, successes == trials ? 1 : center + half);
    }

    /// <summary>Wilson's interval of each row. A row with a fault has no share; the reason names the row and the fault.</summary>
    /// <param name="rows">Successes and trials.</param>
    /// <param name="confidence">Above 0, below 1.</param>
    public static IReadOnlyList<Estimate> Wilson(IReadOnlyList<(long Successes, long Trials)> rows, double confidence = 0.95) =>
        [.. rows.Select((r, i) => Fault(r.Successes, r.Trials) is { } fault ? Estimate.None($"row {i}: {fault}") : Wilson(r.Successes, r.Trials, confidence))];

    /// <summary>Jeffreys: quantiles of Beta(x + 1/2, n - x + 1/2); 0 at x = 0 and 1 at x = n (Brown, Cai &amp; DasGupta 2001).</summary>
    public static Estimate Jeffreys(long successes, long trials, double confidence = 0.95)
    {
        Check(successes, trials);
        if (trials == 0)
        {
            return Estimate.None(NoTrials);
        }

        var beta = new BetaDistribution(successes + 0.5, trials - successes + 0.5);
        double tail = (1 - confidence) / 2;
        return Estimate.From(
            successes / (double)trials,
            successes == 0 ? 0 : beta.Quantile(tail),
            successes == trials ? 1 : beta.Quantile(1 - tail));
    }

    /// <summary>Clopper and Pearson (1934): covers at least as often as it says, usually more often.</summary>
    public static Estimate ClopperPearson(long successes, long trials, double confidence = 0.95)
    {
        Check(successes, trials);
        if (trials == 0)
        {
            return Estimate.None(NoTrials);
        }

        double tail = (1 - confidence) / 2;
        long failures = trials - successes;
        return Estimate.From(
            successes / (double)trials,
            successes == 0 ? 0 : new BetaDistribution(successes, failures + 1).Quantile(tail),
            failures == 0 ? 1 : new BetaDistribution(successes + 1, failures).Quantile(1 - tail));
    }

    /// <summary>Half-width of a two-sided normal interval in standard deviations; 1.96 at 0.95.</summary>
    internal static double Z(double confidence) => NormalDistribution.Quantile(1 - ((1 - confidence) / 2));

    private static string? Fault(long successes, long trials) =>
        successes < 0 ? "the count of successes is below 0"
        : successes > trials ? "more successes than trials"
        : null;

    private static void Check(long successes, long trials)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(successes);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(successes, trials);
    }
}
