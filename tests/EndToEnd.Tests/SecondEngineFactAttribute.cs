using Xunit.v3;

namespace PartsSignal.EndToEnd.Tests;

/// <summary>
/// A test that reads the store with another engine; skipped with a reason where it is not installed. Where
/// <c>PARTSSIGNAL_REQUIRE_BROWSER</c> is 1 it is never skipped, and fails instead.
/// </summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class SecondEngineFactAttribute : FactAttribute, ITraitAttribute
{
    public SecondEngineFactAttribute([System.Runtime.CompilerServices.CallerFilePath] string? file = null, [System.Runtime.CompilerServices.CallerLineNumber] int line = -1)
        : base(file, line)
    {
        if (Environment.GetEnvironmentVariable("PARTSSIGNAL_REQUIRE_BROWSER") != "1" && !Directory.Exists(Path.Combine(Folder, "node_modules", "nodejs-polars")))
        {
            Skip = "no second engine: run 'npm install' in tests/SecondEngine";
        }
    }

    public static string Folder => Path.Combine(RepositoryFolder.Root, "tests", "SecondEngine");

    public IReadOnlyCollection<KeyValuePair<string, string>> GetTraits() => [new("Group", "SecondEngine")];
}
