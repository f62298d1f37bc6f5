using Xunit.v3;

namespace PartsSignal.Tests;

/// <summary>
/// A test that opens pages in a real browser; skipped with a reason on a machine without one, or without the
/// accessibility checker. Where <c>PARTSSIGNAL_REQUIRE_BROWSER</c> is 1 it is never skipped, and fails instead.
/// </summary>
[AttributeUsage(AttributeTargets.Method)]
internal class BrowserFactAttribute : FactAttribute, ITraitAttribute
{
    public BrowserFactAttribute([System.Runtime.CompilerServices.CallerFilePath] string? file = null, [System.Runtime.CompilerServices.CallerLineNumber] int line = -1)
        : base(file, line)
    {
        if (Environment.GetEnvironmentVariable("PARTSSIGNAL_REQUIRE_BROWSER") == "1")
        {
            return;
        }

        if (BrowserHost.Executable is null)
        {
            Skip = "no browser: install chromium, or name one in PARTSSIGNAL_BROWSER";
        }
        else if (AxeScript.Text is null)
        {
            Skip = "no accessibility checker: run 'npm install' in tests/Browser";
        }
    }

    public virtual IReadOnlyCollection<KeyValuePair<string, string>> GetTraits() => [new(TestGroup.Trait, "Browser")];
}

/// <summary>A test in a real browser of <see cref="TestGroup.Long"/>.</summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class LongBrowserFactAttribute : BrowserFactAttribute
{
    public LongBrowserFactAttribute([System.Runtime.CompilerServices.CallerFilePath] string? file = null, [System.Runtime.CompilerServices.CallerLineNumber] int line = -1)
        : base(file, line) => Skip ??= TestGroup.Long.Skip;

    public override IReadOnlyCollection<KeyValuePair<string, string>> GetTraits() => [.. base.GetTraits(), .. TestGroup.Long.Traits];
}
