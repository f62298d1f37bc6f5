using System.IO.Hashing;
using System.Text;

namespace PartsSignal.Pipeline.Privacy;

/// <summary>Domain separator for hashing: the same text in two realms gets different identifiers.</summary>
internal sealed class IdentityRealm
{
    private IdentityRealm(string name) => (Name, Seed) = (name, unchecked((long)XxHash3.HashToUInt64(Encoding.UTF8.GetBytes(name))));

    /// <summary>Serials of appliances.</summary>
    public static IdentityRealm Serial { get; } = new("serial");

    /// <summary>Phone numbers.</summary>
    public static IdentityRealm Phone { get; } = new("phone");

    /// <summary>Addresses.</summary>
    public static IdentityRealm Address { get; } = new("address");

    /// <summary>Names of customers.</summary>
    public static IdentityRealm Customer { get; } = new("name");

    /// <summary>Whole rows of a source file.</summary>
    public static IdentityRealm Row { get; } = new("row");

    /// <summary>The realm's name.</summary>
    public string Name { get; }

    /// <summary>What sets the realm's digests apart.</summary>
    internal long Seed { get; }

    /// <inheritdoc/>
    public override string ToString() => Name;
}
