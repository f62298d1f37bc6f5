using PartsSignal.Analysis.VanPlan.Loads;

namespace PartsSignal.Analysis.VanPlan;

/// <summary>The shop as it was known on the evening before a day, in indexes.</summary>
/// <param name="From">First day a plan would be for.</param>
/// <param name="Vans">The vans.</param>
/// <param name="Parts">Parts used in the history window or counted on a van, by number.</param>
/// <param name="Jobs">Settled jobs whose parts are known.</param>
/// <param name="Sizes">How many vans, types, families and parts.</param>
/// <param name="Restock">Restocking period and lead times.</param>
/// <param name="Kinds">Components of the parts, and which families a list says they fit.</param>
public sealed record ShopView(
    DateOnly From, IReadOnlyList<VanLimits> Vans, IReadOnlyList<StockPart> Parts, IReadOnlyList<PastJob> Jobs, DemandSizes Sizes,
    RestockRule Restock, PartKinds Kinds)
{
    /// <summary>Finished jobs of the history window that list parts of which some cannot be told by number; they are not among <see cref="Jobs"/>.</summary>
    public int JobsWithoutNumbers { get; init; }

    /// <summary>Index of a part by its number; -1: not among them.</summary>
    public int IndexOf(string number)
    {
        int low = 0;
        int high = Parts.Count - 1;
        while (low <= high)
        {
            int middle = (low + high) / 2;
            int order = string.CompareOrdinal(Parts[middle].Number, number);
            if (order == 0)
            {
                return middle;
            }

            (low, high) = order < 0 ? (middle + 1, high) : (low, middle - 1);
        }

        return -1;
    }
}
