using System.Globalization;

namespace PartsSignal.Analysis.Tests.Fixtures;

/// <summary>
/// Seeds of the simulated worlds. With PARTSSIGNAL_SEED_SHIFT=7000 the slow tests judge worlds that nobody looked at
/// when a method was chosen or a factor was set.
/// </summary>
internal static class WorldSeed
{
    private static readonly int Shift =
        Environment.GetEnvironmentVariable("PARTSSIGNAL_SEED_SHIFT") is { Length: > 0 } shift ? int.Parse(shift, CultureInfo.InvariantCulture) : 0;

    /// <summary>The seed of a world.</summary>
    /// <param name="world">Number of the world, from 0 or 1.</param>
    public static int Of(int world) => world + Shift;

    /// <summary>Random numbers for a world.</summary>
    /// <param name="world">Number of the world, from 0 or 1.</param>
    public static Random Random(int world) => new(Of(world));
}
