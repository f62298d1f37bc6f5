using PartsSignal.Analysis.CrossReference;

namespace PartsSignal.Pipeline.Privacy;

/// <summary>The identifier an appliance gets from its serial: letters and digits of the serial, within its brand.</summary>
public static class SerialKey
{
    private const int LeastCharacters = 3;

    /// <summary>The identifier; null: too short to tell appliances apart.</summary>
    /// <param name="key">The shop's key.</param>
    /// <param name="brand">Brand; null: not known.</param>
    /// <param name="serial">Serial as typed.</param>
    public static string? Of(IdentityKey key, string? brand, string? serial)
    {
        string compact = CompactKey.Of(serial);
        return compact.Length < LeastCharacters ? null : key.Identify("serial", CompactKey.Of(brand) + "/" + compact);
    }
}
