using PartsSignal.Analysis.Sql;
using PartsSignal.Pipeline.Running;

namespace PartsSignal.Pipeline.Tests.Running;

public sealed class ResultPublisherTests : IDisposable
{
    private readonly string _folder = Path.Combine(Path.GetTempPath(), "partssignal-tests", Path.GetRandomFileName());

    private sealed record Row(int Place, string? Name, double? Share);

    [Fact]
    public void Publish_RowsInOrder_AreWrittenInThatOrderAsParquetAndCsv()
    {
        using Database database = With(new Row(2, "b", 0.5), new Row(1, "a", null), new Row(3, "c", 1));
        Assert.Equal(3, ResultPublisher.Publish(database, ["sample"], _folder));
        Assert.Equal(["place,name,share", "2,b,0.5", "1,a,", "3,c,1.0"], File.ReadAllLines(Path.Combine(_folder, "sample.csv")));
        string parquet = Database.Literal(Path.Combine(_folder, "sample.parquet"));
        Assert.Equal([2, 1, 3], database.Query($"from read_parquet({parquet})", r => r.GetInt32(0)));
    }

    [Theory]
    [InlineData("=1+1", "'=1+1")]
    [InlineData("@x", "'@x")]
    [InlineData("-3", "'-3")]
    [InlineData("plain", "plain")]
    public void Publish_TextLikeAFormula_IsTextInTheSpreadsheet(string text, string expected)
    {
        using Database database = With(new Row(1, text, null));
        ResultPublisher.Publish(database, ["sample"], _folder);
        Assert.Equal($"1,{expected},", File.ReadAllLines(Path.Combine(_folder, "sample.csv"))[1]);
    }

    [Fact]
    public void Publish_TabThenFormula_IsTextInTheSpreadsheet()
    {
        using Database database = With(new Row(1, "\t=1", null));
        ResultPublisher.Publish(database, ["sample"], _folder);
        Assert.Contains("'\t=1", File.ReadAllText(Path.Combine(_folder, "sample.csv")), StringComparison.Ordinal);
    }

    [Fact]
    public void Publish_Twice_GivesTheSameBytes()
    {
        using Database database = With(new Row(1, "a", 0.1));
        ResultPublisher.Publish(database, ["sample"], _folder);
        byte[] first = File.ReadAllBytes(Path.Combine(_folder, "sample.parquet"));
        ResultPublisher.Publish(database, ["sample"], _folder);
        Assert.Equal(first, File.ReadAllBytes(Path.Combine(_folder, "sample.parquet")));
    }

    [Fact]
    public void Publish_NotANumber_FailsAndWritesNone()
    {
        using Database database = With(new Row(1, "a", 0.1));
        database.Execute("create or replace table sample as values ('nan'::double)");
        Assert.Throws<InvalidDataException>(() => ResultPublisher.Publish(database, ["sample"], _folder));
        Assert.Empty(Directory.EnumerateFiles(_folder));
    }

    public void Dispose()
    {
        if (Directory.Exists(_folder))
        {
            Directory.Delete(_folder, recursive: true);
        }
    }

    private static Database With(params Row[] rows)
    {
        var database = Database.Open(new DatabaseOptions { Threads = 1 });
        ResultTable.Write(database, "sample", rows);
        return database;
    }
}
