using System.Text.Json.Nodes;

namespace PartsSignal.EndToEnd.Tests;

public sealed class NoticeTests
{
    [Fact]
    public void Notice_EveryPackageOfTheProgram_IsListedWithItsVersionAndLicence()
    {
        string[] lines = File.ReadAllLines(Path.Combine(RepositoryFolder.Root, "NOTICE"));
        var listed = lines.Where(l => l.StartsWith("| ", StringComparison.Ordinal)).Select(l => l.Split('|', StringSplitOptions.TrimEntries))
            .Where(cells => cells[3].Length > 2).Select(cells => $"{cells[1]} {cells[2]}").ToHashSet(StringComparer.Ordinal);
        string[] packages = [.. new[] { "analysis", "reports", "pipeline" }
            .Select(project => JsonNode.Parse(File.ReadAllText(Path.Combine(RepositoryFolder.Root, project, "packages.lock.json")))!)
            .SelectMany(locked => locked["dependencies"]!.AsObject())
            .SelectMany(framework => framework.Value!.AsObject())
            .Where(package => (string?)package.Value!["type"] != "Project")
            .Select(package => $"{package.Key} {package.Value!["resolved"]}").Distinct()];
        Assert.True(packages.Length > 20);
        Assert.Empty(packages.Except(listed));
    }
}
