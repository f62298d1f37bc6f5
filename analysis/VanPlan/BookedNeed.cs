using PartsSignal.Analysis.VanPlan.Data;
using PartsSignal.Analysis.VanPlan.Kits;

namespace PartsSignal.Analysis.VanPlan;

/// <summary>A job already booked, with the chance of each part number it may need.</summary>
/// <param name="Van">Van that will serve it.</param>
/// <param name="Odds">Part numbers and chances, 0 to 1; what is left of 1 needs no part or one not known.</param>
public sealed record BookedNeed(string Van, IReadOnlyList<(string PartNumber, double Chance)> Odds)
{
    /// <summary>In the indexes of a view; vans and parts it does not know are left out.</summary>
    internal static IReadOnlyList<BookedJob> In(ShopView view, IReadOnlyList<BookedNeed> booked)
    {
        string[] vans = [.. view.Vans.Select(v => v.Van)];
        return [.. booked.Select(b => (Van: Array.IndexOf(vans, b.Van), b.Odds))
            .Where(b => b.Van >= 0)
            .Select(b => new BookedJob(b.Van, [.. b.Odds
                .Select(o => (o.Chance, Part: view.IndexOf(o.PartNumber)))
                .Where(o => o.Part >= 0 && o.Chance > 0)
                .Select(o => (o.Chance, (IReadOnlyList<PartNeed>)[new PartNeed(o.Part, 1)]))]))];
    }
}
