using PartsSignal.Analysis.Sql;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Privacy;

namespace PartsSignal.Pipeline.Planning;

/// <summary>The vans of the settings as the store calls them.</summary>
internal static class StoredVans
{
    /// <summary>The same settings, with labels for vans that are named after someone where the shop's people are kept by initials.</summary>
    /// <param name="settings">As the shop's file says.</param>
    /// <param name="output">Folder of the store and its key.</param>
    /// <param name="store">A session over the store.</param>
    public static ShopSettings Name(ShopSettings settings, OutputFolder output, Database store)
    {
        if (settings.Technicians != "initials" || settings.Vans.Count == 0 || !File.Exists(output.Key))
        {
            return settings;
        }

        var labels = new VanLabels(store.Read<Label>("queries/van_plan/van_labels.sql").ToDictionary(l => l.VanKey, l => l.Van, StringComparer.Ordinal));
        return settings with { Vans = labels.Name(settings.Vans, IdentityKey.LoadOrMake(output.Key)) };
    }

    private sealed record Label(string VanKey, string Van);
}
