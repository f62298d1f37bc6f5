using PartsSignal.Analysis.VanPlan.Loads;

namespace PartsSignal.Analysis.VanPlan.Replay;

/// <summary>
/// Serves a van's jobs first come, first served. A job counts only if everything it needed was aboard. Built once per
/// stream; a run allocates nothing.
/// </summary>
internal sealed class FirstComeReplay
{
    private readonly JobStream _jobs;
    private readonly ConsumeRule _rule;
    private readonly int[] _back;
    private readonly int[] _partStart;
    private readonly int[] _partLines;
    private readonly int[] _next;
    private readonly int[] _aboard;
    private readonly bool[] _taken;
    private readonly bool[] _done;

    /// <summary>Prepares a replay.</summary>
    /// <param name="jobs">The jobs.</param>
    /// <param name="restock">When used pieces are replaced.</param>
    /// <param name="rule">What a job that misses a part takes.</param>
    public FirstComeReplay(JobStream jobs, RestockRule restock, ConsumeRule rule)
    {
        (_jobs, _rule) = (jobs, rule);
        int parts = restock.LeadDays.Count;
        _back = new int[jobs.Part.Length];
        _partStart = new int[parts + 1];
        for (int j = 0; j < jobs.Count; j++)
        {
            for (int i = jobs.First(j); i < jobs.End(j); i++)
            {
                _back[i] = restock.BackAboard(jobs.Day[j], jobs.Part[i]);
                _partStart[jobs.Part[i] + 1]++;
            }
        }

        for (int p = 0; p < parts; p++)
        {
            _partStart[p + 1] += _partStart[p];
        }

        _partLines = new int[jobs.Part.Length];
        int[] fill = [.. _partStart];
        for (int i = 0; i < jobs.Part.Length; i++)
        {
            _partLines[fill[jobs.Part[i]]++] = i;
        }

        _next = new int[parts];
        _aboard = new int[parts];
        _taken = new bool[jobs.Part.Length];
        _done = new bool[jobs.Count];
    }

    /// <summary>Which jobs the last run finished at the first visit.</summary>
    public ReadOnlySpan<bool> Done => _done;

    /// <summary>Replays one load.</summary>
    /// <param name="load">Pieces aboard at the start, by part; also what restocking fills up to.</param>
    /// <returns>Weight of the jobs finished at the first visit.</returns>
    public double Run(ReadOnlySpan<int> load)
    {
        load.CopyTo(_aboard);
        _partStart.AsSpan(0, _next.Length).CopyTo(_next);
        double sum = 0;
        for (int j = 0; j < _jobs.Count; j++)
        {
            bool all = true;
            for (int i = _jobs.First(j); i < _jobs.End(j); i++)
            {
                Deliver(_jobs.Part[i], _jobs.Day[j]);
                all &= _aboard[_jobs.Part[i]] >= _jobs.Quantity[i];
            }

            // Below zero: so many pieces wait for the next delivery.
            bool takes = all || _rule == ConsumeRule.TakeWhatIsThere;
            for (int i = _jobs.First(j); i < _jobs.End(j); i++)
            {
                _taken[i] = takes;
                _aboard[_jobs.Part[i]] -= takes ? _jobs.Quantity[i] : 0;
            }

            _done[j] = all;
            sum += all ? _jobs.Weight[j] : 0;
        }

        return sum;
    }

    private void Deliver(int part, int day)
    {
        int at = _next[part];
        int end = _partStart[part + 1];
        while (at < end && _back[_partLines[at]] <= day)
        {
            int line = _partLines[at++];
            _aboard[part] += _taken[line] ? _jobs.Quantity[line] : 0;
        }

        _next[part] = at;
    }
}

/// <summary>What happens to the parts aboard when a job misses one.</summary>
internal enum ConsumeRule
{
    /// <summary>
    /// What is aboard is set aside for the job's second visit, what is missing waits for the next delivery; both are
    /// reordered at the next restocking. The default: it is what a shop does.
    /// </summary>
    TakeWhatIsThere,

    /// <summary>The job takes nothing: all its parts are ordered for it, and the van keeps what it has.</summary>
    AllOrNothing,
}
