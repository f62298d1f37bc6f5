using PartsSignal.Analysis.Statistics;
using PartsSignal.Analysis.Statistics.Intervals;

namespace PartsSignal.Analysis.VanPlan.Replay;

/// <summary>Intervals of completion, and of the lead of one policy over another, by drawing whole weeks of jobs.</summary>
internal sealed class CompletionIntervals
{
    private const int LeastWeeks = 8;
    private readonly BlockBootstrap? _bootstrap;

    /// <param name="weeks">Weeks there are.</param>
    /// <param name="draws">How many samples.</param>
    /// <param name="seed">Seed; the same seed draws the same weeks for every policy.</param>
    public CompletionIntervals(int weeks, int draws, int seed) =>
        _bootstrap = weeks < LeastWeeks || draws < 1 ? null : new BlockBootstrap(weeks, draws, seed);

    /// <summary>Share finished with its 95 % interval; no interval from fewer than eight weeks.</summary>
    /// <param name="weeks">Jobs finished and jobs, per week.</param>
    public Estimate Share(IReadOnlyList<(double Finished, double Jobs)> weeks)
    {
        double jobs = weeks.Sum(w => w.Jobs);
        if (jobs <= 0)
        {
            return Estimate.None("no jobs");
        }

        double share = weeks.Sum(w => w.Finished) / jobs;
        (double Lower, double Upper)? interval = _bootstrap?.Mean(weeks, share);
        return Estimate.From(share, interval?.Lower, interval?.Upper);
    }

    /// <summary>Lead of one policy over another on the same jobs, in shares of the jobs, with its 95 % interval.</summary>
    public Estimate Lead(IReadOnlyList<(double Finished, double Jobs)> plan, IReadOnlyList<(double Finished, double Jobs)> other) =>
        Share([.. plan.Zip(other, (p, o) => (p.Finished - o.Finished, p.Jobs))]);
}
