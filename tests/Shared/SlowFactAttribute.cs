using Xunit.v3;

namespace PartsSignal.Tests;

/// <summary>Marks a test of the slow group: <c>dotnet test --filter Group=Slow</c>; the plain run skips it unless PARTSSIGNAL_SLOW=1.</summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class SlowFactAttribute : FactAttribute, ITraitAttribute
{
    public SlowFactAttribute([System.Runtime.CompilerServices.CallerFilePath] string? file = null, [System.Runtime.CompilerServices.CallerLineNumber] int line = -1)
        : base(file, line)
    {
        if (Environment.GetEnvironmentVariable("PARTSSIGNAL_SLOW") != "1")
        {
            Skip = "slow group: set PARTSSIGNAL_SLOW=1";
        }
    }

    public IReadOnlyCollection<KeyValuePair<string, string>> GetTraits() => [new("Group", "Slow")];
}
