using PartsSignal.Analysis.Statistics.Numerics;

namespace PartsSignal.Analysis.Prediction;

/// <summary>
/// One number that makes odds bolder or more careful: p_k^(1/T), made to sum to 1 (Guo et al. 2017). Above 1 the odds
/// are softened, below 1 sharpened; 1 leaves them alone. The order of the needs never changes.
/// </summary>
internal static class TemperatureScaling
{
    /// <summary>Odds at a temperature.</summary>
    public static double[] Apply(ReadOnlySpan<double> odds, double temperature)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(temperature);
        var scaled = new double[odds.Length];
        if (temperature == 1)
        {
            odds.CopyTo(scaled);
            return scaled;
        }

        double sum = 0;
        for (int k = 0; k < scaled.Length; k++)
        {
            scaled[k] = Math.Pow(odds[k], 1 / temperature);
            sum += scaled[k];
        }

        for (int k = 0; k < scaled.Length; k++)
        {
            scaled[k] /= sum;
        }

        return scaled;
    }

    /// <summary>The temperature with the lowest log loss on calls the model did not learn from; 1 when there are none. Kept within 0.2 to 5.</summary>
    public static double Fit(IReadOnlyList<Forecast> forecasts)
    {
        Forecast[] known = [.. forecasts.Where(f => f.Truth >= 0)];
        if (known.Length == 0)
        {
            return 1;
        }

        double[][] logs = [.. known.Select(f => f.Odds.Select(p => Math.Log(Math.Max(p, double.Epsilon))).ToArray())];
        return Math.Exp(GoldenSection.Minimize(t => Loss(known, logs, Math.Exp(-t)), Math.Log(0.2), Math.Log(5)));
    }

    private static double Loss(Forecast[] forecasts, double[][] logs, double power)
    {
        double loss = 0;
        for (int i = 0; i < forecasts.Length; i++)
        {
            double[] log = logs[i];
            double top = log.Max() * power, sum = 0;
            foreach (double l in log)
            {
                sum += Math.Exp(l * power - top);
            }

            loss += top + Math.Log(sum) - log[forecasts[i].Truth] * power;
        }

        return loss;
    }
}
