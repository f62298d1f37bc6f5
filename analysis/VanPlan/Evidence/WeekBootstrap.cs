using PartsSignal.Analysis.Statistics;

namespace PartsSignal.Analysis.VanPlan.Evidence;

/// <summary>
/// Intervals of completion, and of the lead of one policy over another, by drawing whole weeks with replacement
/// (block bootstrap, Kuensch 1989): jobs of one week share weather, stock and technician.
/// </summary>
public sealed class WeekBootstrap
{
    private const int LeastWeeks = 8;
    private readonly int[][] _draws;
    private readonly int _weeks;

    /// <param name="weeks">Weeks there are.</param>
    /// <param name="draws">How many samples.</param>
    /// <param name="seed">Seed; the same seed draws the same weeks for every policy.</param>
    public WeekBootstrap(int weeks, int draws, int seed)
    {
        _weeks = weeks;
        var random = new Random(seed);
        _draws = weeks < LeastWeeks ? [] : [.. Enumerable.Range(0, draws).Select(_ => Enumerable.Range(0, weeks).Select(_ => random.Next(weeks)).ToArray())];
    }

    /// <summary>Share finished with its 95 % interval.</summary>
    /// <param name="weeks">Jobs and jobs finished, per week.</param>
    public Estimate Share(IReadOnlyList<(double Jobs, double Finished)> weeks) =>
        Interval(weeks.Sum(w => w.Jobs), weeks.Sum(w => w.Finished), d => d.Sum(i => weeks[i].Jobs), d => d.Sum(i => weeks[i].Finished));

    /// <summary>Lead of one policy over another on the same jobs, in shares of the jobs, with its 95 % interval.</summary>
    public Estimate Lead(IReadOnlyList<(double Jobs, double Finished)> plan, IReadOnlyList<(double Jobs, double Finished)> other) =>
        Share([.. plan.Zip(other, (p, o) => (p.Jobs, p.Finished - o.Finished))]);

    private Estimate Interval(double jobs, double finished, Func<int[], double> jobsOf, Func<int[], double> finishedOf)
    {
        if (jobs <= 0)
        {
            return Estimate.None("no jobs");
        }

        if (_draws.Length == 0)
        {
            return Estimate.Of(finished / jobs, null, null);
        }

        double[] shares = [.. _draws.Select(d => jobsOf(d) is var n && n > 0 ? finishedOf(d) / n : finished / jobs).Order()];
        return Estimate.Of(finished / jobs, Quantile(shares, 0.025), Quantile(shares, 0.975));
    }

    private static double Quantile(double[] sorted, double p) => sorted[(int)Math.Round(p * (sorted.Length - 1))];

    /// <summary>Weeks drawn from.</summary>
    public int Weeks => _weeks;
}
