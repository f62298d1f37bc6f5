using PartsSignal.Analysis.Statistics.Distributions;

namespace PartsSignal.Analysis.Trends;

/// <summary>Settings of the comparison with past years.</summary>
/// <param name="Years">Years to go back, 3 or more for a trend.</param>
/// <param name="HalfWindow">Months before and after the same calendar month.</param>
/// <param name="Skipped">Newest months left out of the baseline.</param>
/// <param name="Alpha">Chance of a false alarm.</param>
/// <param name="WeightThreshold">Residual beyond which a past month is played down.</param>
internal sealed record FarringtonOptions(int Years = 3, int HalfWindow = 1, int Skipped = 3, double Alpha = 0.01, double WeightThreshold = 2.58);

/// <summary>A month held against the same season of past years.</summary>
/// <param name="Expected">Expected count.</param>
/// <param name="Scatter">Dispersion, 1 or more.</param>
/// <param name="Upper">Largest count that is still usual.</param>
/// <param name="UpperByPower">The same from the 2/3-power approximation.</param>
/// <param name="Alarm">True when the count is beyond Upper.</param>
/// <param name="Missing">Why there is no comparison; null when there is one.</param>
internal sealed record FarringtonResult(double? Expected, double? Scatter, long? Upper, double? UpperByPower, bool Alarm, string? Missing);

/// <summary>
/// Quasi-Poisson comparison with the same calendar months of past years, past outbreaks played down by Anscombe
/// residuals, limit from a negative binomial at the fitted mean (Farrington and others 1996; Noufaily and others 2013).
/// </summary>
internal static class FarringtonFlexible
{
    /// <summary>Compares the last month of a series with the years before.</summary>
    /// <param name="counts">Monthly counts, oldest first.</param>
    /// <param name="options">Settings.</param>
    public static FarringtonResult Compare(IReadOnlyList<double> counts, FarringtonOptions? options = null)
    {
        options ??= new FarringtonOptions();
        int now = counts.Count - 1;
        int[] months = [.. Enumerable.Range(1, options.Years)
            .SelectMany(y => Enumerable.Range(now - 12 * y - options.HalfWindow, 2 * options.HalfWindow + 1))
            .Where(m => m < now - options.Skipped).Order()];
        if (months.Length == 0 || months[0] < 0)
        {
            return None($"fewer than {options.Years} years before");
        }

        double most = months.Max(m => counts[m]);
        (CountModel model, double scatter) = Fit(counts, months, MonthTerms.Trend, options);
        bool trend = options.Years >= 3 && model.Missing is null && model.Predict(MonthTerms.Trend(now), 1) <= most;
        Func<double, double[]> terms = trend ? MonthTerms.Trend : static _ => [1];
        if (!trend)
        {
            (model, scatter) = Fit(counts, months, terms, options);
        }

        if (model.Missing is { } reason)
        {
            return None(reason);
        }

        double mean = model.Predict(terms(now), 1);
        double error = mean * model.LogError(terms(now)) * Math.Sqrt(Math.Max(1e-300, model.Dispersion ?? 1));
        long upper = Upper(mean, scatter, options.Alpha);
        return new FarringtonResult(mean, scatter, upper, PowerLimit(mean, scatter, error, options.Alpha), counts[now] > upper, null);
    }

    /// <summary>Upper limit of a count on the 2/3-power scale, where Poisson counts are nearly symmetric.</summary>
    /// <param name="mean">Fitted mean.</param>
    /// <param name="scatter">Dispersion.</param>
    /// <param name="error">Standard error of the mean.</param>
    /// <param name="alpha">Chance of a false alarm.</param>
    internal static double PowerLimit(double mean, double scatter, double error, double alpha)
    {
        double spread = Math.Sqrt(4.0 / 9 * Math.Cbrt(mean) * (scatter + error * error / mean));
        return Math.Pow(Math.Pow(mean, 2.0 / 3) + NormalDistribution.Quantile(1 - alpha) * spread, 1.5);
    }

    private static (CountModel Model, double Scatter) Fit(IReadOnlyList<double> counts, int[] months, Func<double, double[]> terms, FarringtonOptions options)
    {
        CountRow[] rows = [.. months.Select(m => new CountRow(counts[m], 1, terms(m)))];
        CountModel first = PoissonRegression.Fit(rows);
        if (first.Missing is not null)
        {
            return (first, 1);
        }

        double[] weights = PlayDown(rows, first, Math.Max(1, first.Dispersion ?? 1), options.WeightThreshold);
        CountModel second = PoissonRegression.Fit([.. rows.Select((r, i) => r with { Weight = weights[i] })]);
        return (second, Math.Max(1, second.Dispersion ?? 1));
    }

    private static double[] PlayDown(CountRow[] rows, CountModel model, double scatter, double threshold)
    {
        double[] raw = new double[rows.Length];
        for (int i = 0; i < raw.Length; i++)
        {
            double mean = model.Fitted[i];
            double residual = 1.5 * (Math.Pow(rows[i].Count, 2.0 / 3) * Math.Pow(mean, -1.0 / 6) - Math.Sqrt(mean))
                / Math.Sqrt(scatter * Math.Max(1e-12, 1 - model.Leverages[i]));
            raw[i] = residual > threshold ? 1 / (residual * residual) : 1;
        }

        double scale = raw.Length / raw.Sum();
        return [.. raw.Select(r => r * scale)];
    }

    private static long Upper(double mean, double scatter, double alpha) => scatter > 1
        ? new NegativeBinomialDistribution(mean / (scatter - 1), 1 / scatter).Quantile(1 - alpha)
        : new PoissonDistribution(mean).Quantile(1 - alpha);

    private static FarringtonResult None(string reason) => new(null, null, null, null, false, reason);
}
