using System.Collections.Concurrent;
using PartsSignal.SampleShop.Chance;
using PartsSignal.SampleShop.World;

namespace PartsSignal.SampleShop.Scoring;

/// <summary>
/// How often a cause strikes an appliance of a given age that has lived through earlier failures nobody asks about:
/// the renewal density m = f1 + m * f2, where f1 is the first part's life and f2 that of the parts after it.
/// </summary>
internal static class LifeTables
{
    private const double Step = 0.25;
    private const int Steps = 400;

    private static readonly ConcurrentDictionary<(int Family, int Cause, bool Batch), double[]> Known = new();

    /// <summary>Failures per year of household use at an age in years of household use.</summary>
    public static double Rate(ModelFamily family, int cause, int buildMonth, double age)
    {
        FamilyCause which = family.Causes[cause];
        if (which.Cause.Shape == 1)
        {
            return 1 / which.ScaleYears;
        }

        bool batch = Faults.InBatch(family, which.Cause, buildMonth);
        double[] table = Known.GetOrAdd((family.Index, cause, batch), _ => Build(which, batch));
        double at = Math.Clamp((age / Step) - 0.5, 0, Steps - 1);
        int cell = (int)at;
        double next = cell + 1 < Steps ? table[cell + 1] : table[cell];
        return table[cell] + ((at - cell) * (next - table[cell]));
    }

    private static double[] Build(FamilyCause which, bool batch)
    {
        double early = which.Cause.Component == Faults.PumpComponent
            ? Faults.PumpEarlyShare * which.Part!.SecondSupplierShare
            : 0;
        double bad = batch ? Faults.BatchShare : 0;
        double[] first = new double[Steps];
        double[] later = new double[Steps];
        for (int i = 0; i < Steps; i++)
        {
            double own = Within(i, which.Cause.Shape, which.ScaleYears);
            first[i] = ((1 - bad) * own) + (bad * Within(i, Faults.BatchShape, Faults.BatchScaleYears));
            later[i] = ((1 - early) * own) + (early * Within(i, Faults.PumpEarlyShape, Faults.PumpEarlyScaleYears));
        }

        double[] density = new double[Steps];
        for (int i = 0; i < Steps; i++)
        {
            double sum = first[i];
            for (int j = 1; j <= i; j++)
            {
                sum += density[i - j] * later[j];
            }

            density[i] = sum / (1 - later[0]);
        }

        return [.. density.Select(d => d / Step)];
    }

    private static double Within(int cell, double shape, double scale) =>
        Cdf((cell + 1) * Step, shape, scale) - Cdf(cell * Step, shape, scale);

    private static double Cdf(double age, double shape, double scale) =>
        1 - ExactMath.Exp(-ExactMath.Pow(age / scale, shape));
}
