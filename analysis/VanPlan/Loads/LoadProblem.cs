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

    /// <summary>Worth of the jobs that need no part: finished with any load.</summary>
    public double AlwaysDone { get; }

    /// <summary>Worth of all jobs, also of those no load can finish.</summary>
    public double TotalWeight { get; }

    internal LoadUnits Units { get; }

    internal LoadJobs Jobs { get; }

    /// <summary>The same problem under other limits.</summary>
    public LoadProblem Within(LoadLimits limits) => new([.. Parts], limits, Units, Jobs, AlwaysDone, TotalWeight);

    /// <summary>Money a load ties up, in hundredths.</summary>
    public long CostCents(ReadOnlySpan<int> load)
    {
        long sum = 0;
        for (int p = 0; p < load.Length; p++)
        {
            sum += load[p] * Parts[p].CostCents;
        }

        return sum;
    }

    /// <summary>Space a load takes.</summary>
    public double SpaceOf(ReadOnlySpan<int> load)
    {
        double sum = 0;
        for (int p = 0; p < load.Length; p++)
        {
            sum += load[p] * Parts[p].Space;
        }

        return sum;
    }

    /// <summary>Worth of the jobs a load finishes, less the charges of its pieces.</summary>
    public double Value(ReadOnlySpan<int> load) => Worth(load) - Charges(load);

    /// <summary>Worth of the jobs a load finishes.</summary>
    public double Worth(ReadOnlySpan<int> load)
    {
        double sum = AlwaysDone;
        for (int p = 0; p < load.Length; p++)
        {
            int most = Math.Min(load[p], Units.Count(p));
            for (int k = 1; k <= most; k++)
            {
                sum += Units.Gain[Units.Of(p, k)];
            }
        }

        for (int j = 0; j < Jobs.Count; j++)
        {
            if (Jobs.IsMet(j, load))
            {
                sum += Jobs.Weight[j];
            }
        }

        return sum;
    }

    private double Charges(ReadOnlySpan<int> load)
    {
        double sum = 0;
        for (int p = 0; p < load.Length; p++)
        {
            for (int k = 1; k <= load[p]; k++)
            {
                sum += Parts[p].Charge(k);
            }
        }

        return sum;
    }
}

/// <summary>A part a van may carry.</summary>
/// <param name="Number">Current part number; breaks ties.</param>
/// <param name="CostCents">Price of one piece in hundredths of the currency, 0 or more.</param>
/// <param name="Space">Space units of one piece, 0 or more.</param>
/// <param name="MaxUnits">Most pieces one van may carry; 0: stays off the vans.</param>
/// <param name="UnitCharges">
/// What carrying the first, second, ... piece costs in the unit of the objective (holding, loss on pieces that go
/// stale); the last value holds for every further piece. Empty: nothing.
/// </param>
public sealed record LoadPart(string Number, long CostCents, double Space, int MaxUnits, IReadOnlyList<double> UnitCharges)
{
    /// <summary>A part whose carrying costs nothing beyond its price.</summary>
    public LoadPart(string number, long costCents, double space, int maxUnits)
        : this(number, costCents, space, maxUnits, [])
    {
    }

    /// <summary>Charge of the piece with that count, counted from 1.</summary>
    internal double Charge(int unit) => UnitCharges.Count == 0 ? 0 : UnitCharges[Math.Min(unit, UnitCharges.Count) - 1];
}

/// <summary>A job that is finished when the van started out with at least so many pieces of each part.</summary>
/// <param name="Weight">What finishing it is worth, in the unit of the objective; 0 or more.</param>
/// <param name="Levels">Pieces the van must have started out with, so that this job still finds its own; a part at most once.</param>
internal sealed record LoadJob(double Weight, IReadOnlyList<PartNeed> Levels);

/// <summary>So many pieces of one part.</summary>
/// <param name="Part">Index of the part in its list, 0 or more.</param>
/// <param name="Quantity">Pieces, 1 or more.</param>
public readonly record struct PartNeed(int Part, int Quantity);

/// <summary>What a van may hold.</summary>
/// <param name="BudgetCents">Money in hundredths, 0 or more.</param>
/// <param name="Space">Space units, 0 or more; infinite: not limited.</param>
public sealed record LoadLimits(long BudgetCents, double Space)
{
    /// <summary>Slack for sums of space units.</summary>
    internal const double SpaceSlack = 1e-9;

    /// <summary>True when both limits hold.</summary>
    public bool Allows(long costCents, double space) => costCents <= BudgetCents && space <= Space + SpaceSlack;
}
