namespace PartsSignal.Analysis.VanPlan.Loads;

/// <summary>Jobs that hang on units of two or more parts, packed into arrays, and for each unit the jobs that hang on it.</summary>
internal sealed class LoadJobs
{
    private readonly int[] _start;
    private readonly int[] _unitStart;
    private readonly int[] _unitJobs;

    public LoadJobs(int[] start, int[] part, int[] level, double[] weight, LoadUnits units)
    {
        (_start, Part, Level, Weight) = (start, part, level, weight);
        _unitStart = new int[units.Total + 1];
        for (int i = 0; i < part.Length; i++)
        {
            _unitStart[units.Of(part[i], level[i]) + 1]++;
        }

        for (int u = 0; u < units.Total; u++)
        {
            _unitStart[u + 1] += _unitStart[u];
        }

        _unitJobs = new int[part.Length];
        int[] next = _unitStart.ToArray();
        for (int j = 0; j < weight.Length; j++)
        {
            for (int i = start[j]; i < start[j + 1]; i++)
            {
                _unitJobs[next[units.Of(part[i], level[i])]++] = j;
            }
        }
    }

    /// <summary>Number of jobs.</summary>
    public int Count => Weight.Length;

    /// <summary>Part of each line.</summary>
    public int[] Part { get; }

    /// <summary>Level of each line.</summary>
    public int[] Level { get; }

    /// <summary>Worth of each job.</summary>
    public double[] Weight { get; }

    /// <summary>First line of a job; its last is just before the first of the next.</summary>
    public int First(int job) => _start[job];

    /// <summary>Lines of a job.</summary>
    public int Lines(int job) => _start[job + 1] - _start[job];

    /// <summary>Jobs with a line at exactly this unit.</summary>
    public ReadOnlySpan<int> At(int unit) => _unitJobs.AsSpan(_unitStart[unit], _unitStart[unit + 1] - _unitStart[unit]);

    /// <summary>True when a load holds every level of the job.</summary>
    public bool IsMet(int job, ReadOnlySpan<int> load)
    {
        for (int i = _start[job]; i < _start[job + 1]; i++)
        {
            if (load[Part[i]] < Level[i])
            {
                return false;
            }
        }

        return true;
    }
}
