using System.Text.RegularExpressions;

namespace PartsSignal.Analysis.Tests.Sql;

/// <summary>
/// Rows are read by column name. A read by position breaks without a word when a query's columns change their order.
/// </summary>
public sealed partial class OrdinalReadTests
{
    [Theory]
    [InlineData("analysis")]
    [InlineData("pipeline")]
    [InlineData("reports")]
    [InlineData("data-sample")]
    public void Source_ReadsRows_ByNameOnly(string project)
    {
        string root = Root();
        Assert.All(
            Directory.EnumerateFiles(Path.Combine(root, project), "*.cs", SearchOption.AllDirectories)
                .Select(f => (Path: Path.GetRelativePath(root, f).Replace('\\', '/'), Text: File.ReadAllText(f)))
                .Where(f => !f.Path.Contains("/obj/", StringComparison.Ordinal)),
            f => Assert.False(ByPosition().IsMatch(f.Text), $"{f.Path}: {ByPosition().Match(f.Text).Value}"));
    }

    [Theory]
    [InlineData("r.GetString(0)", true)]
    [InlineData("row.Long(13) ?? 0", true)]
    [InlineData("reader.GetFieldValue<List<int>>(5)", true)]
    [InlineData("matrix.GetLength(0)", false)]
    [InlineData("counts.GetValueOrDefault(1)", false)]
    public void ByPosition_Code_IsTold(string code, bool byPosition) => Assert.Equal(byPosition, ByPosition().IsMatch(code));

    private static string Root()
    {
        string? folder = AppContext.BaseDirectory;
        while (folder is not null && !File.Exists(Path.Combine(folder, "PartsSignal.sln")))
        {
            folder = Path.GetDirectoryName(folder);
        }

        return folder ?? throw new InvalidOperationException("The source is not above the test's folder.");
    }

    [GeneratedRegex(@"\.(Get(String|Boolean|Byte|Int16|Int32|Int64|Float|Double|Decimal|DateTime|Guid|Value|FieldValue<[^()]*>)|IsDBNull|Text|Long|Int|Double|Money|Day|Flag)\(\d+\)")]
    private static partial Regex ByPosition();
}
