using System.Reflection;
using Xunit.v3;

namespace PartsSignal.Tests;

/// <summary>Each test of this project is run by somebody: by the plain command, by CI after it, or by hand in the slow group.</summary>
public sealed class TestGroupTests(ITestOutputHelper output)
{
    // Tests of these groups are in the plain run where their tool is installed; CI installs it and fails without.
    private static readonly string[] NeedATool = ["Browser", "SecondEngine"];

    [Fact]
    public void EveryTest_BelongsToOneRun()
    {
        (MethodInfo Method, FactAttribute Fact, string[] Groups)[] tests = [.. typeof(TestGroupTests).Assembly.GetTypes()
            .SelectMany(t => t.GetMethods())
            .Select(m => (m, m.GetCustomAttribute<FactAttribute>()!, Groups(m)))
            .Where(t => t.Item2 is not null)];
        string[] known = [.. TestGroup.All.Select(g => g.Name), .. NeedATool];
        Assert.All(tests, t =>
        {
            string name = $"{t.Method.DeclaringType!.Name}.{t.Method.Name}";
            Assert.True(t.Groups.All(known.Contains), $"{name} is in a group that nobody runs: {string.Join(", ", t.Groups)}");
            Assert.True(t.Fact.Skip is null || t.Groups.Length > 0, $"{name} is skipped and in no group");
            Assert.True(t.Groups.Count(g => TestGroup.All.Any(o => o.Name == g)) <= 1, $"{name} is in two groups");
        });
        foreach (IGrouping<string, string> group in tests.Select(t => t.Groups.Length == 0 ? "plain" : string.Join(" and ", t.Groups)).GroupBy(g => g).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            output.WriteLine($"{group.Key}: {group.Count()} methods");
        }
    }

    [Fact]
    public void LongGroup_IsRunByCi()
    {
        string ci = File.ReadAllText(Path.Combine(RepositoryFolder.Root, ".ci", "run"));
        Assert.Contains($"{TestGroup.Long.Variable}=1 dotnet test", ci, StringComparison.Ordinal);
        Assert.Contains($"{TestGroup.Trait}={TestGroup.Long.Name}", ci, StringComparison.Ordinal);
        Assert.Contains("PARTSSIGNAL_REQUIRE_BROWSER=1", ci, StringComparison.Ordinal);
    }

    private static string[] Groups(MethodInfo method) =>
        [.. method.GetCustomAttributes().OfType<ITraitAttribute>().SelectMany(a => a.GetTraits()).Where(t => t.Key == TestGroup.Trait).Select(t => t.Value).Order(StringComparer.Ordinal)];
}
