using Xunit.v3;

namespace PartsSignal.Tests;

/// <summary>
/// A group of tests that the plain run leaves out. Each is switched on by an environment variable and carries the trait
/// <c>Group</c>, so that <c>--filter-trait Group=NAME</c> picks it.
/// </summary>
internal sealed class TestGroup
{
    /// <summary>Name of the trait that tells the group of a test.</summary>
    public const string Trait = "Group";

    /// <summary>Simulated worlds and long random runs: hours.</summary>
    public static readonly TestGroup Slow = new("Slow", "PARTSSIGNAL_SLOW");

    /// <summary>Further cases of what the plain run tests on one case. CI runs them after the plain run.</summary>
    public static readonly TestGroup Long = new("Long", "PARTSSIGNAL_LONG");

    private TestGroup(string name, string variable) => (Name, Variable) = (name, variable);

    /// <summary>Both groups.</summary>
    public static IReadOnlyList<TestGroup> All => [Slow, Long];

    /// <summary>Value of the trait.</summary>
    public string Name { get; }

    /// <summary>The environment variable that is 1 where the group runs.</summary>
    public string Variable { get; }

    /// <summary>Why a test of the group is skipped, or null if it runs.</summary>
    public string? Skip => Environment.GetEnvironmentVariable(Variable) == "1" ? null : $"{Name.ToLowerInvariant()} group: set {Variable}=1";

    /// <summary>The trait of a test of the group.</summary>
    public IReadOnlyCollection<KeyValuePair<string, string>> Traits => [new(Trait, Name)];
}

/// <summary>Marks a test of <see cref="TestGroup.Slow"/>.</summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class SlowFactAttribute : FactAttribute, ITraitAttribute
{
    public SlowFactAttribute([System.Runtime.CompilerServices.CallerFilePath] string? file = null, [System.Runtime.CompilerServices.CallerLineNumber] int line = -1)
        : base(file, line) => Skip = TestGroup.Slow.Skip;

    public IReadOnlyCollection<KeyValuePair<string, string>> GetTraits() => TestGroup.Slow.Traits;
}

/// <summary>Marks a test of <see cref="TestGroup.Long"/>.</summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class LongFactAttribute : FactAttribute, ITraitAttribute
{
    public LongFactAttribute([System.Runtime.CompilerServices.CallerFilePath] string? file = null, [System.Runtime.CompilerServices.CallerLineNumber] int line = -1)
        : base(file, line) => Skip = TestGroup.Long.Skip;

    public IReadOnlyCollection<KeyValuePair<string, string>> GetTraits() => TestGroup.Long.Traits;
}

/// <summary>Marks a test with cases of <see cref="TestGroup.Long"/>.</summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class LongTheoryAttribute : TheoryAttribute, ITraitAttribute
{
    public LongTheoryAttribute([System.Runtime.CompilerServices.CallerFilePath] string? file = null, [System.Runtime.CompilerServices.CallerLineNumber] int line = -1)
        : base(file, line) => Skip = TestGroup.Long.Skip;

    public IReadOnlyCollection<KeyValuePair<string, string>> GetTraits() => TestGroup.Long.Traits;
}
