using PartsSignal.Analysis.VanPlan.Loads;

namespace PartsSignal.Analysis.VanPlan;

/// <summary>The booked jobs of one van in the indexes of a view.</summary>
/// <param name="Jobs">Per job: the chance that it needs no part, and parts with their chances.</param>
public sealed record BookedDemand(IReadOnlyList<(double NoPart, IReadOnlyList<(double Chance, PartNeed Need)> Parts)> Jobs)
{
    /// <summary>No booked job.</summary>
    public static BookedDemand None { get; } = new([]);

    /// <summary>A van's booked jobs; parts the view does not know are left out.</summary>
    public static BookedDemand From(ShopView view, string van, IReadOnlyList<BookedNeed> booked) => new(
        [.. booked.Where(b => b.Van == van).Select(b => (b.NoPart, (IReadOnlyList<(double, PartNeed)>)
            [.. b.Parts
                .Select(p => (p.Chance, Need: new PartNeed(view.IndexOf(p.PartNumber), p.Quantity)))
                .Where(p => p.Need.Part >= 0 && p.Chance > 0)]))]);

    /// <summary>Jobs expected to be finished at the first visit, when each finds the load whole.</summary>
    public double Finished(IReadOnlyList<int> load) =>
        Jobs.Sum(j => j.NoPart + j.Parts.Where(p => load[p.Need.Part] >= p.Need.Quantity).Sum(p => p.Chance));
}
