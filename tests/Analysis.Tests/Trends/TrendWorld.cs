using PartsSignal.Analysis.Trends;

namespace PartsSignal.Analysis.Tests.Trends;

/// <summary>A rise put into a world, with its date.</summary>
/// <param name="Family">Family it hits.</param>
/// <param name="Component">Component it hits.</param>
/// <param name="From">First month, counted from the log's first.</param>
/// <param name="PerMonth">Extra failures a month at each month since From; the last one holds on.</param>
/// <param name="MadeMonth">Build month of the appliances it hits; null: any.</param>
internal sealed record Rise(string Family, string Component, int From, double[] PerMonth, int? MadeMonth = null);

/// <summary>
/// Calls of a shop in which nothing changes but what is put in: families of uneven size, components of uneven share, a
/// summer season, and jobs that close days to months after the call.
/// </summary>
internal sealed record TrendWorld(int Seed)
{
    public const int First = 2019 * 12;

    public int Months { get; init; } = 60;
    public int Families { get; init; } = 8;
    public double CallsPerMonth { get; init; } = 160;
    public double Season { get; init; } = 0.3;
    public Rise? Rise { get; init; }
    public static readonly string[] Components = ["inlet_valve", "drain_pump", "timer", "control_board", "door_lock", "drive_belt", "motor", "heater"];

    /// <summary>Last month of the log.</summary>
    public int Last => First + Months - 1;

    /// <summary>All calls, in the order they came.</summary>
    public IReadOnlyList<TrendCall> Calls()
    {
        var random = new Random(Seed);
        double[] sizes = [.. Enumerable.Range(0, Families).Select(f => 1.0 / (1 + f))];
        var calls = new List<TrendCall>();
        for (int m = 0; m < Months; m++)
        {
            for (int f = 0; f < Families; f++)
            {
                long number = Poisson(random, CallsPerMonth * sizes[f] / sizes.Sum());
                for (long i = 0; i < number; i++)
                {
                    double wave = 1 + Season * Math.Sin(2 * Math.PI * m / 12);
                    calls.Add(Call(random, calls.Count, m, Family(f), Pick(random, wave), First + m - random.Next(12, 120)));
                }
            }

            if (Rise is { } rise && m >= rise.From)
            {
                long extra = Poisson(random, rise.PerMonth[Math.Min(m - rise.From, rise.PerMonth.Length - 1)]);
                for (long i = 0; i < extra; i++)
                {
                    calls.Add(Call(random, calls.Count, m, rise.Family, rise.Component, rise.MadeMonth ?? First + m - random.Next(12, 120)));
                }
            }
        }

        return calls;
    }

    /// <summary>The calls, sorted for scanning.</summary>
    public CallTable Book() => new(Calls(), First, Last);

    public static string Family(int number) => $"F{number + 1}";

    public static long Poisson(Random random, double mean)
    {
        double limit = Math.Exp(-mean);
        long count = -1;
        for (double product = 1; product > limit; count++)
        {
            product *= random.NextDouble();
        }

        return count;
    }

    private static TrendCall Call(Random random, int number, int month, string family, string? component, int made)
    {
        int delay = random.NextDouble() is var u && u < 0.75 ? 0 : u < 0.93 ? 1 : u < 0.98 ? 2 : 3;
        return new TrendCall(
            $"J{number:00000}", First + month, First + month + delay, "washer", family, component,
            $"T{random.Next(4)}", $"C{random.Next(3000)}", $"{family}-{random.Next(4)}", made);
    }

    private static string? Pick(Random random, double wave)
    {
        double[] weights = [0.10 * wave, 0.14, 0.05, 0.10, 0.07, 0.06, 0.04, 0.04, 0.30, 0.10];
        double u = random.NextDouble() * weights.Sum();
        int k = 0;
        while (u > weights[k] && k < weights.Length - 1)
        {
            u -= weights[k++];
        }

        return k < Components.Length ? Components[k] : k == Components.Length ? "none" : null;
    }
}
