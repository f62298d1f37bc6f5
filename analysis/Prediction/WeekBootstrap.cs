using PartsSignal.Analysis.Statistics;

namespace PartsSignal.Analysis.Prediction;

/// <summary>
/// Intervals for mean figures by drawing whole weeks with replacement (block bootstrap, Kunsch 1989): calls of one week
/// share weather, staff and stock, so single calls would make the intervals too narrow.
/// </summary>
internal static class WeekBootstrap
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
        return Estimate.From(figure.Average(), means[(int)(0.025 * (Draws - 1))], means[(int)Math.Ceiling(0.975 * (Draws - 1))]);
    }

    /// <summary>The calibration error with its interval, weeks drawn whole and bins cut anew in every draw.</summary>
    public static Estimate CalibrationError(IReadOnlyList<Forecast> forecasts, int seed)
    {
        int[] weekOf = [.. forecasts.Select(f => WeekOf(f.OpenedOn))];
        int[] weeks = [.. weekOf.Distinct().Order()];
        if (weeks.Length < 2)
        {
            return Estimate.None("fewer than two weeks of calls");
        }

        (double Said, bool Right, int Week)[] sorted =
        [
            .. forecasts.Select((f, i) => (Said: f.Confidence, Right: f.Top >= 0 && f.Top == f.Truth, Week: Array.BinarySearch(weeks, weekOf[i]))).OrderBy(x => x.Said),
        ];
        var random = new Random(seed);
        var errors = new double[Draws / 5];
        for (int d = 0; d < errors.Length; d++)
        {
            var times = new int[weeks.Length];
            for (int w = 0; w < weeks.Length; w++)
            {
                times[random.Next(weeks.Length)]++;
            }

            errors[d] = Reliability.Error([.. sorted.SelectMany(x => Enumerable.Repeat((x.Said, x.Right), times[x.Week]))]);
        }

        Array.Sort(errors);
        double own = Reliability.Error(Reliability.Table(forecasts))!.Value;
        return Estimate.From(own, Math.Min(own, errors[errors.Length / 40]), Math.Max(own, errors[errors.Length - 1 - errors.Length / 40]));
    }

    /// <summary>Number of the week a day lies in; weeks begin on Monday.</summary>
    public static int WeekOf(DateOnly day) => (day.DayNumber - ((int)day.DayOfWeek + 6) % 7) / 7;
}
