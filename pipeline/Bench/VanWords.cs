using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.VanPlan;
using PartsSignal.Pipeline.Publishing;

namespace PartsSignal.Pipeline.Bench;

/// <summary>How pages speak of vans.</summary>
internal static class VanWords
{
    /// <summary>Which van jobs count for where the shop's files do not tell, or null where they do or nothing was loaded yet.</summary>
    public static VanStandIn? StandIn(ShopFolder shop)
    {
        if (!Directory.Exists(shop.Output.Store))
        {
            return null;
        }

        using Database database = CurrentStore.Open(shop.Output);
        return VanStandIn.Of(database);
    }
}
