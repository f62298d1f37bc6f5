using PartsSignal.Analysis.Sql;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Publishing;
using PartsSignal.Pipeline.Reporting;

namespace PartsSignal.Pipeline.Bench;

/// <summary>How far the figures reach, and when that is too long ago.</summary>
internal static class DataAge
{
    /// <summary>Last day the figures of the last update reach, or null before the first update.</summary>
    public static DateOnly? LastDay(ShopFolder shop)
    {
        if (!Directory.Exists(shop.Output.Store))
        {
            return null;
        }

        try
        {
            ShopSettings settings = ShopFile.Load(shop.Files);
            using Database database = CurrentStore.Open(shop.Output);
            return ReportMaker.LastDay(database, settings);
        }
        catch (BadInputException)
        {
            // Broken settings are told where they can be mended.
            return null;
        }
    }
}
