using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Tests.Fixtures;

namespace PartsSignal.Analysis.Tests.Sql;

public sealed class ResultTableTests
{
    private sealed record Row(string Name, int? Count, decimal Price, DateOnly? SeenOn, double? Share95, bool Known);

    [Fact]
    public void Write_RecordsWithGaps_ComeBackAsWritten()
    {
        using var database = Database.Open();
        ResultTable.Write(database, "sample", [new Row("a", 3, 12.34m, new DateOnly(2024, 2, 29), 0.5, true), new Row("b", null, -1m, null, null, false)]);
        var rows = database.Query("from sample", r => (r.Text(0), r.Long(1), r.Money(2), r.Day(3), r.Double(4), r.Flag(5)));
        Assert.Equal(("a", 3L, 12.34m, new DateOnly(2024, 2, 29), 0.5, true), rows[0]);
        Assert.Equal(("b", null, -1m, null, null, false), rows[1]);
        Assert.Equal("share_95", database.Query("select column_name from duckdb_columns() where table_name = 'sample' and column_index = 5", r => r.GetString(0))[0]);
    }

    [Fact]
    public void Write_NotANumber_IsRefused()
    {
        using var database = Database.Open();
        Assert.Throws<ArgumentException>(() => ResultTable.Write(database, "sample", [new Row("a", 1, 1m, null, double.NaN, true)]));
    }

    [Fact]
    public void Attach_EmptyFolder_GivesEveryTableOfTheContract()
    {
        using var database = Database.Open();
        StoreTables.Attach(database, Path.Combine(Path.GetTempPath(), "partssignal-no-such-store"));
        Assert.All(StoreTables.Names, n => Assert.Equal(0, database.Count(n)));
        Assert.True(database.Has("jobs"));
        Assert.False(database.Has("no_such_table"));
    }
}
