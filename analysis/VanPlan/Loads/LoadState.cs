using System.Runtime.CompilerServices;

namespace PartsSignal.Analysis.VanPlan.Loads;

/// <summary>A load under change: adding or taking off one piece updates money, space and worth in the time its jobs take.</summary>
internal sealed class LoadState
{
    private readonly LoadProblem _problem;
    private readonly int[] _missing;

    public LoadState(LoadProblem problem)
    {
        _problem = problem;
        _missing = new int[problem.Jobs.Count];
        Pieces = new int[problem.Parts.Count];
        Load(Pieces.ToArray());
    }

    /// <summary>Pieces of each part.</summary>
    public int[] Pieces { get; }

    /// <summary>Worth less charges.</summary>
    public double Value { get; private set; }

    /// <summary>Money, hundredths.</summary>
    public long CostCents { get; private set; }

    /// <summary>Space units.</summary>
    public double Space { get; private set; }

    /// <summary>True when the load keeps both limits.</summary>
    public bool IsAllowed => _problem.Limits.Allows(CostCents, Space);

    /// <summary>Starts over from a load; pieces no job can use are left out.</summary>
    public void Load(ReadOnlySpan<int> load)
    {
        Array.Clear(Pieces);
        (Value, CostCents, Space) = (_problem.AlwaysDone, 0, 0);
        for (int j = 0; j < _missing.Length; j++)
        {
            _missing[j] = _problem.Jobs.Lines(j);
        }

        for (int p = 0; p < load.Length; p++)
        {
            int most = Math.Min(load[p], _problem.Units.Count(p));
            for (int k = 0; k < most; k++)
            {
                Add(p);
            }
        }
    }

    /// <summary>True when one more piece could ever matter.</summary>
    public bool CanAdd(int part) => Pieces[part] < _problem.Units.Count(part);

    /// <summary>True when so many pieces more stay within both limits.</summary>
    public bool Fits(int part, int pieces)
    {
        LoadPart p = _problem.Parts[part];
        return _problem.Limits.Allows(CostCents + (pieces * p.CostCents), Space + (pieces * p.Space));
    }

    /// <summary>What one more piece brings, less its charge.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public double GainOfNext(int part)
    {
        int unit = _problem.Units.Of(part, Pieces[part] + 1);
        double gain = _problem.Units.Gain[unit] - _problem.Units.Charge[unit];
        foreach (int job in _problem.Jobs.At(unit))
        {
            gain += _missing[job] == 1 ? _problem.Jobs.Weight[job] : 0;
        }

        return gain;
    }

    /// <summary>What taking off the last piece loses, less the charge it saves.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public double LossOfLast(int part)
    {
        int unit = _problem.Units.Of(part, Pieces[part]);
        double loss = _problem.Units.Gain[unit] - _problem.Units.Charge[unit];
        foreach (int job in _problem.Jobs.At(unit))
        {
            loss += _missing[job] == 0 ? _problem.Jobs.Weight[job] : 0;
        }

        return loss;
    }

    /// <summary>Puts one piece aboard.</summary>
    public void Add(int part)
    {
        Value += GainOfNext(part);
        foreach (int job in _problem.Jobs.At(_problem.Units.Of(part, ++Pieces[part])))
        {
            _missing[job]--;
        }

        Move(part, 1);
    }

    /// <summary>Takes one piece off.</summary>
    public void Remove(int part)
    {
        Value -= LossOfLast(part);
        foreach (int job in _problem.Jobs.At(_problem.Units.Of(part, Pieces[part]--)))
        {
            _missing[job]++;
        }

        Move(part, -1);
    }

    /// <summary>True when the load finishes the job.</summary>
    public bool Finishes(int job) => _missing[job] == 0;

    private void Move(int part, int pieces)
    {
        CostCents += pieces * _problem.Parts[part].CostCents;
        Space += pieces * _problem.Parts[part].Space;
    }
}
