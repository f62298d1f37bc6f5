namespace PartsSignal.Analysis.Tests.Sql;

public sealed class SqlLineageTests
{
    private const string Begin = "<!-- lineage: written by SqlLineageTests -->\n";
    private const string End = "<!-- end of lineage -->";

    private static string Readme => Path.Combine(RepositoryFolder.Root, "analysis", "Sql", "README.md");

    [Fact]
    public void Readme_Lineage_IsThatOfTheFiles()
    {
        string text = File.ReadAllText(Readme);
        int from = text.IndexOf(Begin, StringComparison.Ordinal) + Begin.Length, to = text.IndexOf(End, StringComparison.Ordinal);
        Assert.InRange(to, from, text.Length);
        string drawn = SqlLineage.Text();
        if (Environment.GetEnvironmentVariable("PARTSSIGNAL_WRITE_SNAPSHOTS") == "1")
        {
            File.WriteAllText(Readme, text[..from] + drawn + text[to..]);
            return;
        }

        Assert.True(text[from..to] == drawn, "The lineage in analysis/Sql/README.md is out of date. Write it anew: PARTSSIGNAL_WRITE_SNAPSHOTS=1 dotnet test --project tests/Analysis.Tests --filter-class '*SqlLineage*'");
    }
}
