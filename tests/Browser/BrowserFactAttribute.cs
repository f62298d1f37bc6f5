using Xunit.v3;

namespace PartsSignal.Tests;

/// <summary>A test that opens pages in a real browser; skipped with a reason on a machine without one.</summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class BrowserFactAttribute : FactAttribute, ITraitAttribute
{
    public BrowserFactAttribute([System.Runtime.CompilerServices.CallerFilePath] string? file = null, [System.Runtime.CompilerServices.CallerLineNumber] int line = -1)
        : base(file, line)
    {
        if (BrowserHost.Executable is null)
        {
            Skip = "no browser: install chromium, or name one in PARTSSIGNAL_BROWSER";
        }
    }

    public IReadOnlyCollection<KeyValuePair<string, string>> GetTraits() => [new("Group", "Browser")];
}
