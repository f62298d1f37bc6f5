using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Staging;
using PartsSignal.Pipeline.Tests.Staging;
using PartsSignal.Pipeline.Understanding;

namespace PartsSignal.Pipeline.Tests.Config;

public sealed class FieldCatalogTests(ContradictionsShop contradictions) : IClassFixture<ContradictionsShop>
{
    [Fact]
    public void FieldWords_EveryField_HasWordsInSevenLanguages()
    {
        string[] fields = [.. HeaderLexicon.Shipped.Fields.Concat(WordFields.Headers.Fields).Where(f => f[0] != '~').Distinct().Order(StringComparer.Ordinal)];
        Assert.Equal(FieldCatalog.All.Select(f => f.Name).Distinct().Order(StringComparer.Ordinal), fields);
    }

    [Fact]
    public void Of_EveryField_IsDescribed() => Assert.All(FieldCatalog.All, f =>
    {
        Assert.Matches("^[A-Z].*[.]$", f.Meaning);
        Assert.Matches("^[a-z_]+$", f.Name);
        Assert.Single(FieldCatalog.Of(f.Kind), g => g.Name == f.Name);
        Assert.True(f.Staged.Count > 0 || f.Personal || f.Cleaner == Cleaner.NotKept, $"{f.Name} is staged nowhere");
        Assert.Equal(f.Staged.Select(c => c.Name), FieldCatalog.Columns(f.Table).Where(c => f.Staged.Any(s => s.Name == c.Name)).Select(c => c.Name));
    });

    [Fact]
    public void Columns_PersonalFields_AreHashedOnly() =>
        Assert.All(FieldCatalog.All.Where(f => f.Personal).SelectMany(f => f.Staged), c => Assert.Equal(ColumnType.Identifier, c.Type));

    // Two rows of one job in a log with a row per part: only what the catalog calls identity makes them tell it in two ways.
    [Theory]
    [InlineData("technician", true)]
    [InlineData("visits", true)]
    [InlineData("complaint", true)]
    [InlineData("error_code", false)]
    [InlineData("brand", false)]
    public void IdentityColumns_RowsOfOneJobThatDifferThere_ContradictEachOther(string field, bool isIdentity)
    {
        Assert.Equal(["2|0"], contradictions.Rows($"from loads select loaded, replaced where source_file = '{field}.csv'"));
        Assert.Equal(isIdentity ? ["job_told_differently"] : [], contradictions.Rows($"from data_faults select fault_kind where source_file = '{field}.csv'"));
        Assert.Equal(isIdentity, FieldCatalog.Get("jobs", field).Identity);
    }

    // A log without job numbers is numbered by the digest of its rows, which must not change when fields are added.
    [Fact]
    public async Task StageAsync_LogWithoutJobNumbers_KeepsItsNumbers()
    {
        using var rig = new StagingRig();
        string[] header = ["opened_on", "technician", "customer_name", "brand", "model", "complaint", "part"];
        StagedFile file = await rig.StageAsync(
            "jobs.csv",
            string.Join(',', header) + "\n2026-08-03,Ada,Ho,Orvane,M-1,hums,P1\n",
            new() { Files = "jobs.csv", Kind = "jobs", Columns = header.ToDictionary(h => h, h => (IReadOnlyList<string>)[h]) });
        Assert.Equal(["row-pl6DSDJQL021"], StagingRig.Rows(file, "staged_jobs", "job_id"));
    }
}

/// <summary>A log for each of some fields, named as the field, with two rows of one job that differ there; loaded once.</summary>
public sealed class ContradictionsShop : Transform.SharedShop
{
    private static readonly (string Field, string First, string Second)[] Told =
        [("technician", "Ada", "Ben"), ("visits", "1", "2"), ("complaint", "hums", "leaks"), ("error_code", "E1", "E2"), ("brand", "Orvane", "Tessly")];

    internal override void Write(Transform.SmallShop shop)
    {
        foreach ((string field, string first, string second) in Told)
        {
            shop.Write($"{field}.csv", $"job_id,opened_on,{field},part\n{field},2026-08-03,{first},P1\n{field},2026-08-03,{second},P2\n");
        }

        IEnumerable<string> sources = Told.Select(t => $$"""{ "files": "{{t.Field}}.csv", "kind": "jobs", "columns": { "job_id": "job_id", "opened_on": "opened_on", "{{t.Field}}": "{{t.Field}}", "part": "part" } }""");
        shop.Write("shop.json", $$"""{ "sources": [ {{string.Join(", ", sources)}} ] }""");
    }
}
