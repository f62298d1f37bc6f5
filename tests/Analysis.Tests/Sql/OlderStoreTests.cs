using PartsSignal.Analysis.Sql;

namespace PartsSignal.Analysis.Tests.Sql;

public sealed class OlderStoreTests
{
    [Fact]
    public void Attach_StoreThatLacksAColumn_ReadsItAsNull()
    {
        string folder = Directory.CreateTempSubdirectory("partssignal-older-").FullName;
        try
        {
            Directory.CreateDirectory(Path.Combine(folder, "van_counts"));
            using Database database = Database.Open(new DatabaseOptions { Folders = [folder] });
            database.Execute($"copy (select '1' as van, 'P' as part_number) to {Database.Literal(Path.Combine(folder, "van_counts", "a.parquet"))}");
            StoreTables.Attach(database, folder);
            Assert.Equal(["1|P|True"], database.Query("select van, part_number, on_hand is null from van_counts", r => $"{r.GetString(0)}|{r.GetString(1)}|{r.GetBoolean(2)}"));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }
}
