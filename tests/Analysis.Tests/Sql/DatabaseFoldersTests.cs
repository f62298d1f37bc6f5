using DuckDB.NET.Data;
using PartsSignal.Analysis.Sql;

namespace PartsSignal.Analysis.Tests.Sql;

public sealed class DatabaseFoldersTests : IDisposable
{
    private readonly string _root = Directory.CreateTempSubdirectory("partssignal-folders-").FullName;

    public void Dispose() => Directory.Delete(_root, recursive: true);

    [Fact]
    public void Open_WithFolders_ReadsAndWritesThereAndNowhereElse()
    {
        string inside = Directory.CreateDirectory(Path.Combine(_root, "out")).FullName;
        string outside = Path.Combine(_root, "secret.csv");
        File.WriteAllText(outside, "name\nsomeone\n");
        using Database database = Database.Open(new DatabaseOptions { Folders = [inside], SpillFolder = Path.Combine(inside, "spill") });
        database.Execute($"copy (select 1 as one) to {Database.Literal(Path.Combine(inside, "a.parquet"))} (format parquet)");
        Assert.Equal(1, database.Query($"from read_parquet({Database.Literal(Path.Combine(inside, "a.parquet"))}) select one", r => r.GetInt32(0)).Single());
        Assert.Throws<DuckDBException>(() => database.Execute($"create table t as from read_csv({Database.Literal(outside)})"));
        Assert.Throws<DuckDBException>(() => database.Execute($"copy (select 1) to {Database.Literal(Path.Combine(_root, "b.csv"))}"));
        Assert.Throws<DuckDBException>(() => database.Execute($"create table t as from read_csv({Database.Literal(Path.Combine(inside, "..", "secret.csv"))})"));
        Assert.Throws<DuckDBException>(() => database.Execute("set enable_external_access = true"));
        Assert.Throws<DuckDBException>(() => database.Execute("install httpfs"));
    }
}
