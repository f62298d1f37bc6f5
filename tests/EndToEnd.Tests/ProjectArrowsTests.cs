using System.Xml.Linq;

namespace PartsSignal.EndToEnd.Tests;

public sealed class ProjectArrowsTests
{
    [Theory]
    [InlineData("analysis/PartsSignal.Analysis.csproj", "")]
    [InlineData("reports/PartsSignal.Reports.csproj", "PartsSignal.Analysis")]
    [InlineData("data-sample/generator/PartsSignal.SampleShop.csproj", "PartsSignal.Analysis")]
    [InlineData("pipeline/PartsSignal.Pipeline.csproj", "PartsSignal.Analysis PartsSignal.Reports PartsSignal.SampleShop")]
    public void ProjectReferences_EachProject_PointOnlyDown(string project, string expected)
    {
        var document = XDocument.Load(Path.Combine(RepositoryFolder.Root, project));
        string[] references = [.. document.Descendants("ProjectReference")
            .Select(r => Path.GetFileNameWithoutExtension((string)r.Attribute("Include")!))
            .Order(StringComparer.Ordinal)];
        Assert.Equal(expected, string.Join(' ', references));
    }

    [Fact]
    public void Sql_InSource_LivesInSqlFilesOnly()
    {
        string[] folders = ["analysis", "pipeline", "reports"];
        var offenders = folders
            .SelectMany(f => Directory.EnumerateFiles(Path.Combine(RepositoryFolder.Root, f), "*.cs", SearchOption.AllDirectories))
            .Where(f => !f.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal))
            .Where(f => File.ReadLines(f).Any(l => !l.TrimStart().StartsWith("///", StringComparison.Ordinal)
                && System.Text.RegularExpressions.Regex.IsMatch(l, "\"[^\"]*\\bselect\\b[^\"]*\\bfrom\\b", System.Text.RegularExpressions.RegexOptions.IgnoreCase)))
            .Select(f => Path.GetRelativePath(RepositoryFolder.Root, f));
        Assert.Empty(offenders);
    }

    [Fact]
    public void Database_WhereverTheProgramOpensIt_IsKeptToItsFolders()
    {
        string[] opened = [.. Directory.EnumerateFiles(Path.Combine(RepositoryFolder.Root, "pipeline"), "*.cs", SearchOption.AllDirectories)
            .SelectMany(File.ReadLines).Where(l => l.Contains("Database.Open(", StringComparison.Ordinal))];
        Assert.NotEmpty(opened);
        Assert.All(opened, line => Assert.Contains("Folders = [", line, StringComparison.Ordinal));
    }
}
