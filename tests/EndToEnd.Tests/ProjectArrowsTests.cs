using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace PartsSignal.EndToEnd.Tests;

public sealed partial class ProjectArrowsTests
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

    // From the bottom to the top; a namespace may use those above it in this list and no other. "" is the project's root.
    private static readonly Dictionary<string, (string Root, string[] Layers)> Projects = new()
    {
        ["analysis"] = ("PartsSignal.Analysis",
        [
            "Statistics.Numerics", "Statistics", "Statistics.Distributions", "Statistics.Intervals", "Statistics.Shrinkage", "Vocabulary", "Sql",
            "CheckOrder", "CrossReference", "Months", "Rates", "Callbacks", "AgeCurves", "Suppliers", "Trends", "BadBatches",
            "Prediction", "Prediction.LogOdds", "Prediction.ModelFiles", "Prediction.OddsPipeline", "Prediction.Contest", "Prediction.Answers",
            "VanPlan.Loads", "VanPlan", "VanPlan.Replay",
        ]),
        ["pipeline"] = ("PartsSignal.Pipeline",
        [
            "Core", "Reading", "Cleaning", "Words", "Config", "Privacy", "Rejects", "Understanding", "Staging", "Staging.Tables", "DateCodes", "Transform", "Review",
            "Publishing", "Running", "Learning", "Planning", "Reporting", "Serving", "FullRun", "Bench", "Commands",
        ]),
        ["reports"] = ("PartsSignal.Reports", ["Components", "Charts", "Workbook", "Phone", "Monthly"]),
        ["data-sample/generator"] = ("PartsSignal.SampleShop", ["Chance", "World", "Dialects", "Simulation", "Writing", "Scoring", ""]),
    };

    [Theory]
    [InlineData("analysis")]
    [InlineData("pipeline")]
    [InlineData("reports")]
    [InlineData("data-sample/generator")]
    public void Namespaces_EachProject_UseOnlyLowerLayers(string project)
    {
        (string root, string[] layers) = Projects[project];
        var read = new NamespaceLayers(Sources(project), root);
        Assert.Equal(layers.Order(StringComparer.Ordinal), read.Names);
        Assert.Empty(read.Upward(layers));
        Assert.Empty(read.InCircles());
    }

    [Theory]
    [InlineData("using T.High;\nnamespace T.Low;\nclass A { }", "Low uses High (low.cs)")]
    [InlineData("namespace T.Low;\nclass A { High.B? b; }", "Low uses High (low.cs)")]
    [InlineData("namespace T.Low;\nclass A { T.High.B? b; }", "Low uses High (low.cs)")]
    [InlineData("namespace T.Low;\n// High.B\nclass A { string b = \"High.B\"; }", "")]
    public void Layers_UpwardUse_IsFoundHoweverItIsWritten(string low, string expected)
    {
        var read = new NamespaceLayers([("low.cs", low), ("high.cs", "using T.Low;\nnamespace T.High;\nclass B { A? a; }")], "T");
        Assert.Equal(expected, string.Join(';', read.Upward(["Low", "High"])));
        Assert.Equal(expected.Length > 0 ? ["High", "Low"] : [], read.InCircles());
    }

    [Fact]
    public void Layers_TypeOfTheEnclosingNamespace_CountsAsUsed()
    {
        var read = new NamespaceLayers([("a.cs", "namespace T.Low;\nclass A { B? b; }"), ("b.cs", "using T.Low;\nnamespace T;\nclass B { A? a; }")], "T");
        Assert.Equal(["", "Low"], read.InCircles());
    }

    // C# may name a table in a statement (create view X as ..., from X), never say which columns or rows.
    [Theory]
    [InlineData("analysis")]
    [InlineData("pipeline")]
    [InlineData("reports")]
    public void Queries_InSource_LiveInSqlFilesOnly(string project) =>
        Assert.Empty(Sources(project).Where(f => QueriesIn(f.Text).Any()).Select(f => $"{f.Path}: {QueriesIn(f.Text).First()}"));

    [Theory]
    [InlineData("database.Query(\"select a from t\")", true)]
    [InlineData("database.Query($\"from {table} select count(*)\")", true)]
    [InlineData("database.Execute($\"copy (from {t} where a > {n}) to 'x'\")", true)]
    [InlineData("database.Execute($\"create view {v} as from {t}\")", false)]
    [InlineData("Text(\"Pick a model from the list where you can\")", false)]
    [InlineData("Element.Create(\"select\")", false)]
    [InlineData("// \"select a from t\"", false)]
    public void Queries_Code_AreFound(string code, bool isQuery) => Assert.Equal(isQuery, QueriesIn(code).Any());

    private static IEnumerable<string> QueriesIn(string source) =>
        source.Split('\n').Where(l => !l.TrimStart().StartsWith("//", StringComparison.Ordinal))
            .SelectMany(l => Literal().Matches(l)).Select(m => m.Value).Where(t => Query().IsMatch(t));

    [GeneratedRegex("\"(?:[^\"\\\\]|\\\\.)*\"")]
    private static partial Regex Literal();

    // A select list; or a source that begins the text or stands in brackets, with a condition, a join or an order.
    [GeneratedRegex(@"\bselect\s+\S.*\bfrom\b|\bfrom\s.*\bselect\s|(?:^""|\()\s*from\s.*\b(where|join|group by|order by|limit)\b", RegexOptions.IgnoreCase)]
    private static partial Regex Query();

    private static IEnumerable<(string Path, string Text)> Sources(string project) =>
        Directory.EnumerateFiles(Path.Combine(RepositoryFolder.Root, project), "*.cs", SearchOption.AllDirectories)
            .Where(f => !f.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal))
            .Select(f => (f, File.ReadAllText(f)));

    [Fact]
    public void Database_WhereverTheProgramOpensIt_IsKeptToItsFolders()
    {
        string[] opened = [.. Directory.EnumerateFiles(Path.Combine(RepositoryFolder.Root, "pipeline"), "*.cs", SearchOption.AllDirectories)
            .SelectMany(File.ReadLines).Where(l => l.Contains("Database.Open(", StringComparison.Ordinal))];
        Assert.NotEmpty(opened);
        Assert.All(opened, line => Assert.Contains("Folders = [", line, StringComparison.Ordinal));
    }
}
