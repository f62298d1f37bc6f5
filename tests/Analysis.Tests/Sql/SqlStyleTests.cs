using System.Text.RegularExpressions;
using PartsSignal.Analysis.Sql;

namespace PartsSignal.Analysis.Tests.Sql;

/// <summary>The one style of all SQL files.</summary>
public sealed partial class SqlStyleTests
{
    private const int LongestLine = 150;
    private static readonly string Root = Path.Combine(RepositoryFolder.Root, "analysis", "Sql");

    private static string[] Files => [.. Directory.EnumerateFiles(Root, "*.sql", SearchOption.AllDirectories).Order(StringComparer.Ordinal)];

    [Fact]
    public void Files_All_AreLaidOutAlike() => AssertAll(Files, (file, text) =>
    [
        .. Fault(!text.EndsWith('\n') || text.EndsWith("\n\n", StringComparison.Ordinal), "does not end with one line break"),
        .. Fault(!text.StartsWith("-- ", StringComparison.Ordinal), "does not begin with a comment"),
        .. Lines(text, l => l.Length > LongestLine && !file.EndsWith(".contract.sql", StringComparison.Ordinal), $"is longer than {LongestLine}"),
        .. Lines(text, l => l.Length == 0, "is empty"),
        .. Lines(text, l => l.Contains('\t', StringComparison.Ordinal) || l.Contains('\r', StringComparison.Ordinal), "holds a tab or a carriage return"),
        .. Lines(text, l => l.EndsWith(' '), "ends with a blank"),
        .. Lines(text, l => (l.Length - l.TrimStart(' ').Length) % 4 != 0, "is not indented by fours"),
        .. Lines(Bare().Replace(text, "''"), l => l.Any(char.IsAsciiLetterUpper), "holds a capital outside of texts and comments"),
        .. Lines(text, l => l.Contains("inner join", StringComparison.Ordinal) || l.Contains("outer join", StringComparison.Ordinal), "says more than join, left join or full join"),
    ]);

    [Fact]
    public void Files_TablesChecksAndQueries_SayInTheFirstLineWhatARowIs() => AssertAll(
        [.. Files.Where(f => !f.Contains("macros", StringComparison.Ordinal) && !f.EndsWith("review_answers.sql", StringComparison.Ordinal) && !f.EndsWith("arrows_known.sql", StringComparison.Ordinal))],
        (_, text) => Fault(!text.StartsWith("-- One row", StringComparison.Ordinal), "does not begin with '-- One row'"));

    [Fact]
    public void Files_StoreTables_EndWithTheirColumnsByName() => AssertAll(
        [.. SqlModels.In("marts").Select(m => Path.Combine(Root, m.Path))],
        (_, text) => Fault(
            !LastSelect().IsMatch(text) || LastSelect().Match(text).Groups[1].Value.Contains('*', StringComparison.Ordinal),
            "has no last select that names every column"));

    [Fact]
    public void Files_TableThatOthersRead_HasChecksBesideIt()
    {
        var read = SqlModels.All.SelectMany(m => m.Reads).ToHashSet(StringComparer.Ordinal);
        Assert.Empty(SqlModels.All
            .Where(m => read.Contains(m.Table) && !m.IsView && !SqlText.Exists(m.Checks))
            .Select(m => $"{m.Path} is read by other tables and has no checks beside it"));
    }

    [Fact]
    public void Files_EveryChecksFile_IsRunWhenItsTableIsMade()
    {
        string[] written = [.. Directory.EnumerateFiles(Path.Combine(RepositoryFolder.Root, "pipeline"), "*.cs", SearchOption.AllDirectories)
            .SelectMany(f => AddResult().Matches(File.ReadAllText(f)).Select(m => m.Groups[1].Value))];
        Assert.NotEmpty(written);
        Assert.Empty(Files
            .Where(f => f.EndsWith(".checks.sql", StringComparison.Ordinal))
            .Select(f => Path.GetFileName(f)[..^".checks.sql".Length])
            .Where(table => SqlModels.Find(table) is null && !written.Contains(table))
            .Select(table => $"{table}.checks.sql stands beside no table that is made"));
    }

    private static void AssertAll(string[] files, Func<string, string, IEnumerable<string>> faults)
    {
        Assert.NotEmpty(files);
        Assert.Empty(files.SelectMany(f => faults(f, File.ReadAllText(f)).Select(fault => $"{Path.GetRelativePath(Root, f)} {fault}")));
    }

    private static IEnumerable<string> Fault(bool isFault, string what) => isFault ? [what] : [];

    private static IEnumerable<string> Lines(string text, Func<string, bool> isFault, string what) =>
        text.TrimEnd('\n').Split('\n').Index().Where(l => isFault(l.Item)).Select(l => $"line {l.Index + 1} {what}");

    [GeneratedRegex("""--[^\n]*|'(?:[^']|'')*'""")]
    private static partial Regex Bare();

    // The last select that is not indented, up to its from.
    [GeneratedRegex(@"(?:^|\n)select\b((?:(?!\nselect\b|\nfrom\b).)*)\nfrom\b(?!.*\nselect\b)", RegexOptions.Singleline)]
    private static partial Regex LastSelect();

    [GeneratedRegex("""AddResult\("([a-z_0-9]+)"|AddResult<[A-Za-z]+>\("([a-z_0-9]+)" """)]
    private static partial Regex AddResult();
}
