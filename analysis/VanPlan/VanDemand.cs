using PartsSignal.Analysis.VanPlan.Loads;

namespace PartsSignal.Analysis.VanPlan;

/// <summary>What one van is expected to be asked for.</summary>
/// <param name="Sets">Part sets with their rates, in a fixed order.</param>
/// <param name="Evidence">Aged jobs in which each part was seen, by part: the less, the wider its demand scatters.</param>
/// <param name="JobsSeen">Aged jobs of the whole shop the estimate rests on.</param>
public sealed record VanDemand(IReadOnlyList<PartSetRate> Sets, IReadOnlyList<double> Evidence, double JobsSeen)
{
    /// <summary>Pieces a day of each part.</summary>
    public double[] PiecesPerDay()
    {
        double[] pieces = new double[Evidence.Count];
        foreach (PartSetRate set in Sets)
        {
            foreach (var need in set.Needs)
            {
                pieces[need.Part] += set.PerDay * need.Quantity;
            }
        }

        return pieces;
    }
}

/// <summary>How often jobs with one part set come.</summary>
/// <param name="Needs">The set; empty: jobs that need no part.</param>
/// <param name="PerDay">Jobs a day, 0 or more.</param>
public sealed record PartSetRate(IReadOnlyList<PartNeed> Needs, double PerDay);
