using PartsSignal.Analysis.Statistics;

namespace PartsSignal.Analysis.VanPlan.Replay;

/// <summary>
/// Intervals of completion, and of the lead of one policy over another, by drawing whole weeks with replacement
/// (block bootstrap, Kuensch 1989): jobs of one week share weather, stock and technician.
/// </summary>
internal sealed class WeekBootstrap
{
    private const int LeastWeeks = 8;
    private readonly int[][] _draws;

    /// <param name="weeks">Weeks there are.</param>
    /// <param name="draws">How many samples.</param>
    /// <param name="seed">Seed; the same seed draws the same weeks for every policy.</param>
    public WeekBootstrap(int weeks, int draws, int seed)
    {
        var random = new Random(seed);
        _draws = weeks < LeastWeeks ? [] : [.. Enumerable.Range(0, draws).Select(_ => Enumerable.Range(0, weeks).Select(_ => random.Next(weeks)).ToArray())];
    }

    /// <summary>Share finished with its 95 % interval; no interval from fewer than eight weeks.</summary>
    /// <param name="weeks">Jobs and jobs finished, per week.</param>
    public Estimate Share(IReadOnlyList<(double Jobs, double Finished)> weeks)
    {
        double jobs = weeks.Sum(w => w.Jobs);
        double finished = weeks.Sum(w => w.Finished);
        if (jobs <= 0)
        {
            return Estimate.None("no jobs");
        }

        if (_draws.Length == 0)
        {
            return Estimate.From(finished / jobs, null, null);
        }

        double[] shares = new double[_draws.Length];
        for (int d = 0; d < shares.Length; d++)
        {
            double drawnJobs = 0;
            double drawnFinished = 0;
            foreach (int week in _draws[d])
            {
                drawnJobs += weeks[week].Jobs;
                drawnFinished += weeks[week].Finished;
            }

            shares[d] = drawnJobs > 0 ? drawnFinished / drawnJobs : finished / jobs;
        }

        Array.Sort(shares);
        return Estimate.From(finished / jobs, Quantile(shares, 0.025), Quantile(shares, 0.975));
    }

    /// <summary>Lead of one policy over another on the same jobs, in shares of the jobs, with its 95 % interval.</summary>
    public Estimate Lead(IReadOnlyList<(double Jobs, double Finished)> plan, IReadOnlyList<(double Jobs, double Finished)> other) =>
        Share([.. plan.Zip(other, (p, o) => (p.Jobs, p.Finished - o.Finished))]);

    private static double Quantile(double[] sorted, double p) => sorted[(int)Math.Round(p * (sorted.Length - 1))];
}
