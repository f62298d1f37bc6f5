using PartsSignal.Analysis.Statistics;
using PartsSignal.Analysis.Statistics.Intervals;

namespace PartsSignal.Analysis.Prediction;

/// <summary>Intervals of figures of forecasts, by drawing whole weeks of calls.</summary>
internal static class WeekIntervals
{
    private const int Draws = 500;

    // A draw of the calibration error sorts the calls into bins anew, so there are fewer.
    private const int CalibrationDraws = 100;
    private const string TooFewWeeks = "fewer than two weeks of calls";

    /// <summary>The mean of a figure with the middle 95 % of its bootstrap means.</summary>
    /// <param name="forecasts">The calls.</param>
    /// <param name="figure">The figure of each call, in the same order.</param>
    /// <param name="seed">Seed of the draws.</param>
    /// <returns>Missing with a reason when there are fewer than two weeks.</returns>
    public static Estimate Mean(IReadOnlyList<Forecast> forecasts, IReadOnlyList<double> figure, int seed)
    {
        (double, double)[] weeks = [.. forecasts
            .Select((f, i) => (Week: WeekOf(f.OpenedOn), Value: figure[i]))
            .GroupBy(x => x.Week).OrderBy(g => g.Key)
            .Select(g => (g.Sum(x => x.Value), (double)g.Count()))];
        if (weeks.Length < 2)
        {
            return Estimate.None(TooFewWeeks);
        }

        double mean = figure.Average();
        (double lower, double upper) = new BlockBootstrap(weeks.Length, Draws, seed).Mean(weeks, mean);
        return Estimate.From(mean, lower, upper);
    }

    /// <summary>The calibration error with its interval, the bins cut anew in every draw.</summary>
    public static Estimate CalibrationError(IReadOnlyList<Forecast> forecasts, int seed)
    {
        int[] weekOf = [.. forecasts.Select(f => WeekOf(f.OpenedOn))];
        int[] weeks = [.. weekOf.Distinct().Order()];
        if (weeks.Length < 2)
        {
            return Estimate.None(TooFewWeeks);
        }

        (double Said, bool Right, int Week)[] sorted =
        [
            .. forecasts.Select((f, i) => (Said: f.Confidence, Right: f.Top >= 0 && f.Top == f.Truth, Week: Array.BinarySearch(weeks, weekOf[i]))).OrderBy(x => x.Said),
        ];
        (double lower, double upper) = new BlockBootstrap(weeks.Length, CalibrationDraws, seed).Interval(draw =>
        {
            var times = new int[weeks.Length];
            foreach (int week in draw)
            {
                times[week]++;
            }

            return Reliability.Error([.. sorted.SelectMany(x => Enumerable.Repeat((x.Said, x.Right), times[x.Week]))]);
        });
        double own = Reliability.Error(Reliability.Table(forecasts))!.Value;
        return Estimate.From(own, Math.Min(own, lower), Math.Max(own, upper));
    }

    /// <summary>Number of the week a day lies in; weeks begin on Monday.</summary>
    public static int WeekOf(DateOnly day) => (day.DayNumber - ((int)day.DayOfWeek + 6) % 7) / 7;
}
