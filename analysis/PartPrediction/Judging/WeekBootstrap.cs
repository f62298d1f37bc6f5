using PartsSignal.Analysis.Statistics;

namespace PartsSignal.Analysis.PartPrediction.Judging;

/// <summary>
/// Intervals for mean figures by drawing whole weeks with replacement (block bootstrap, Kunsch 1989): calls of one week
/// share weather, staff and stock, so single calls would make the intervals too narrow.
/// </summary>
public static class WeekBootstrap
{
    /// <summary>Default number of draws.</summary>
    public const int Draws = 500;

    /// <summary>The mean of a figure with the middle 95 % of its bootstrap means.</summary>
    /// <param name="forecasts">The calls.</param>
    /// <param name="figure">The figure of each call, in the same order.</param>
    /// <param name="seed">Seed of the draws.</param>
    /// <returns>Missing with a reason when there are fewer than two weeks.</returns>
    public static Estimate Mean(IReadOnlyList<Forecast> forecasts, IReadOnlyList<double> figure, int seed)
    {
        (double Sum, int Jobs)[] weeks = [.. forecasts
            .Select((f, i) => (Week: WeekOf(f.OpenedOn), Value: figure[i]))
            .GroupBy(x => x.Week).OrderBy(g => g.Key)
            .Select(g => (g.Sum(x => x.Value), g.Count()))];
        if (weeks.Length < 2)
        {
            return Estimate.None("fewer than two weeks of calls");
        }

        var random = new Random(seed);
        var means = new double[Draws];
        for (int d = 0; d < Draws; d++)
        {
            double sum = 0;
            int jobs = 0;
            for (int w = 0; w < weeks.Length; w++)
            {
                (double s, int n) = weeks[random.Next(weeks.Length)];
                sum += s;
                jobs += n;
            }

            means[d] = sum / jobs;
        }

        Array.Sort(means);
        return Estimate.Of(figure.Average(), means[(int)(0.025 * (Draws - 1))], means[(int)Math.Ceiling(0.975 * (Draws - 1))]);
    }

    /// <summary>Number of the week a day lies in; weeks begin on Monday.</summary>
    public static int WeekOf(DateOnly day) => (day.DayNumber - ((int)day.DayOfWeek + 6) % 7) / 7;
}
