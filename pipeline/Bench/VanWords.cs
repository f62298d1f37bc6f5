using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.VanPlan;
using PartsSignal.Pipeline.Publishing;

namespace PartsSignal.Pipeline.Bench;

/// <summary>How pages speak of vans.</summary>
internal static class VanWords
{
    /// <summary>What stands for vans where the shop's files name none, in one sentence, or null where they do or nothing was loaded yet.</summary>
    public static string? StandIn(ShopFolder shop)
    {
        if (!Directory.Exists(shop.Output.Store))
        {
            return null;
        }

        using Database database = CurrentStore.Open(shop.Output);
        return VanStandIn.Sentence(database);
    }

    /// <summary>Heading of a van's section. A technician or the shop as a whole is no "van 2".</summary>
    /// <param name="van">Its name.</param>
    /// <param name="standIn">What stands for vans, or null for real ones.</param>
    public static string Heading(string van, string? standIn) => standIn is null ? "Van " + van : van;
}
