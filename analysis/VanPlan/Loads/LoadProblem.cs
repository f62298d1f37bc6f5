namespace PartsSignal.Analysis.VanPlan.Loads;

/// <summary>
/// Which pieces to carry so that the jobs finished are worth most within money and space. A piece is a unit (part,
/// count): the second piece of a part only after the first. Jobs that hang on one unit alone are folded into the
/// unit's own gain; the others stay, each hanging on the units of all its parts.
/// </summary>
public sealed class LoadProblem
{
    internal LoadProblem(LoadPart[] parts, LoadLimits limits, LoadUnits units, LoadJobs jobs, double alwaysDone, double total) =>
        (Parts, Limits, Units, Jobs, AlwaysDone, TotalWeight) = (parts, limits, units, jobs, alwaysDone, total);

    /// <summary>The parts, by index.</summary>
    public IReadOnlyList<LoadPart> Parts { get; }

    /// <summary>Money and space.</summary>
    public LoadLimits Limits { get; }

    /// <summary>Worth of the jobs that need no part: finished with any kit.</summary>
    public double AlwaysDone { get; }

    /// <summary>Worth of all jobs, also of those no kit can finish.</summary>
    public double TotalWeight { get; }

    internal LoadUnits Units { get; }

    internal LoadJobs Jobs { get; }

    /// <summary>The same problem under other limits.</summary>
    public LoadProblem Within(LoadLimits limits) => new([.. Parts], limits, Units, Jobs, AlwaysDone, TotalWeight);

    /// <summary>Money a kit ties up, in hundredths.</summary>
    public long CostCents(ReadOnlySpan<int> kit)
    {
        long sum = 0;
        for (int p = 0; p < kit.Length; p++)
        {
            sum += kit[p] * Parts[p].CostCents;
        }

        return sum;
    }

    /// <summary>Space a kit takes.</summary>
    public double SpaceOf(ReadOnlySpan<int> kit)
    {
        double sum = 0;
        for (int p = 0; p < kit.Length; p++)
        {
            sum += kit[p] * Parts[p].Space;
        }

        return sum;
    }

    /// <summary>Worth of the jobs a kit finishes, less the charges of its pieces.</summary>
    public double Value(ReadOnlySpan<int> kit) => Worth(kit) - Charges(kit);

    /// <summary>Worth of the jobs a kit finishes.</summary>
    public double Worth(ReadOnlySpan<int> kit)
    {
        double sum = AlwaysDone;
        for (int p = 0; p < kit.Length; p++)
        {
            int most = Math.Min(kit[p], Units.Count(p));
            for (int k = 1; k <= most; k++)
            {
                sum += Units.Gain[Units.Of(p, k)];
            }
        }

        for (int j = 0; j < Jobs.Count; j++)
        {
            if (Jobs.IsMet(j, kit))
            {
                sum += Jobs.Weight[j];
            }
        }

        return sum;
    }

    private double Charges(ReadOnlySpan<int> kit)
    {
        double sum = 0;
        for (int p = 0; p < kit.Length; p++)
        {
            for (int k = 1; k <= kit[p]; k++)
            {
                sum += Parts[p].Charge(k);
            }
        }

        return sum;
    }
}
