using PartsSignal.Analysis.Sql;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Staging;

namespace PartsSignal.Pipeline.Tests.Staging;

/// <summary>The staged Parquet files have the columns and types of the catalog, but for those that name the file.</summary>
public sealed class StagedShapeTests
{
    private static readonly Dictionary<string, string> Rows = new()
    {
        ["jobs"] = "job_id,opened_on,part\nJ,2026-08-03,P1\n",
        ["job_parts"] = "job_id,part\nJ,P1\n",
        ["part_orders"] = "order_id,ordered_on,part\nO,2026-08-03,P1\n",
        ["parts"] = "part,price\nP1,2.5\n",
        ["supersessions"] = "old_part,new_part\nA1,B1\n",
        ["part_aliases"] = "alias,part\nA1,P1\n",
        ["fitments"] = "model,part\nM1,P1\n",
        ["models"] = "model,brand\nM1,B\n",
        ["units"] = "serial,model\nS111,M1\n",
        ["van_counts"] = "van,part,on_hand\n1,P1,2\n",
    };

    public static TheoryData<string> Kinds => [.. FieldCatalog.Kinds];

    [Theory]
    [MemberData(nameof(Kinds))]
    public async Task StageAsync_AnyKind_ColumnsAndTypesOfTheCatalog(string kind)
    {
        using var rig = new StagingRig();
        string[] header = Rows[kind].Split('\n')[0].Split(',');
        StagedFile file = await rig.StageAsync("a.csv", Rows[kind], new SourceMap { Files = "a.csv", Kind = kind, Columns = header.ToDictionary(h => h, h => (IReadOnlyList<string>)[h]) });
        using Database database = Database.Open();
        Assert.NotEmpty(file.Tables);
        foreach ((string table, string path) in file.Tables)
        {
            StagedSchema.CreateEmpty(database, table);
            database.Execute($"alter table {Database.Quote(table)} drop column source_order");
            database.Execute($"alter table {Database.Quote(table)} drop column source_file");
            Assert.Equal(Shape(database, $"describe {Database.Quote(table)}"), Shape(database, $"describe from read_parquet({Database.Literal(path)})"));
        }
    }

    private static IEnumerable<string> Shape(Database database, string sql) => database.Query(sql, r => r.GetString(0) + " " + r.GetString(1)).Order(StringComparer.Ordinal);
}
