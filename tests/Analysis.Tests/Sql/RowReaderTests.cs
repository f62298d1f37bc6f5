using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Statistics;

namespace PartsSignal.Analysis.Tests.Sql;

public sealed class RowReaderTests
{
    private enum Ending
    {
        FixedAtOnce,
        WrittenOff,
    }

    private sealed record Row(string Name, int? Count, long Seen, decimal Price, DateOnly? SeenOn, double? Share95, bool Known, Ending? Ending);

    private sealed record Group(string Type, string? Family);

    private sealed record Counted(Group Group, long Calls)
    {
        public long Twice => 2 * Calls;
    }

    private sealed record Shares(string Name, Estimate FirstVisitShare, Estimate NoPart);

    private sealed record OneShare(Estimate Share);

    private sealed record Ages(string Unit, IReadOnlyList<int> Days);

    private sealed record Settable
    {
        public required string Name { get; init; }

        public int Count { get; init; }
    }

    [Fact]
    public void ReadTable_WhatResultTableWrote_ComesBackEqual()
    {
        using var database = Database.Open();
        Row[] rows =
        [
            new("a", 3, 4_000_000_000, 12.34m, new DateOnly(2024, 2, 29), 0.5, true, Ending.WrittenOff),
            new("b", null, 0, -1m, null, null, false, null),
        ];
        ResultTable.Write(database, "sample", rows);
        Assert.Equal(rows, database.ReadTable<Row>("sample"));
    }

    [Fact]
    public void ReadTable_ColumnsInAnotherOrderAndWider_AreFoundByName()
    {
        using var database = Database.Open();
        database.Execute("create table sample as select 7::hugeint as count, 'x' as unused, 'a' as name");
        Assert.Equal(new Settable { Name = "a", Count = 7 }, database.ReadTable<Settable>("sample")[0]);
    }

    [Fact]
    public void ReadTable_NestedRecord_TakesItsColumnsFromTheSameRow()
    {
        using var database = Database.Open();
        database.Execute("create table sample as select 'washer' as type, null::varchar as family, 5 as calls");
        Assert.Equal(new Counted(new Group("washer", null), 5), database.ReadTable<Counted>("sample")[0]);
    }

    [Fact]
    public void ReadTable_Estimates_TakeTheirOwnOrTheCommonInterval()
    {
        using var database = Database.Open();
        database.Execute("""
            create table several as select 'a' as name, 0.5 as first_visit_share, 0.4 as first_visit_lower, 0.6 as first_visit_upper,
                null::double as no_part, null::double as no_part_lower, null::double as no_part_upper, 'too few' as no_part_missing
            """);
        database.Execute("create table one as select 0.5::double as share, 0.4 as lower, null::double as upper");
        Shares row = database.ReadTable<Shares>("several")[0];
        Assert.Equal(Estimate.From(0.5, 0.4, 0.6), row.FirstVisitShare);
        Assert.Equal(Estimate.None("too few"), row.NoPart);
        Assert.Equal(Estimate.From(0.5, 0.4, null), database.ReadTable<OneShare>("one")[0].Share);
    }

    [Fact]
    public void ReadTable_ListsAndPlainValues_AreRead()
    {
        using var database = Database.Open();
        database.Execute("create table lists as select 'u' as unit, [1, 2] as days");
        database.Execute("create table names as select unnest(['b', 'a']) as name");
        Assert.Equal([1, 2], database.ReadTable<Ages>("lists")[0].Days);
        Assert.Equal(["b", "a"], database.ReadTable<string>("names"));
    }

    [Fact]
    public void ReadTable_MissingAndMistypedColumns_AreAllNamed()
    {
        using var database = Database.Open();
        database.Execute("create table sample as select 5 as type, 1 as kin");
        var fault = Assert.Throws<TableShapeException>(() => database.ReadTable<Counted>("sample"));
        Assert.Equal("sample cannot be read as Counted: column type is Integer, not String; there is no column family; there is no column calls.", fault.Message);
    }

    [Theory]
    [InlineData("null::bigint", "sample: column calls of Counted is null.")]
    [InlineData("170141183460469231731687303715884105727::hugeint", "sample: column calls of Counted: '170141183460469231731687303715884105727' is no Int64.")]
    public void ReadTable_ValueTheRecordCannotHold_NamesTableColumnAndRecord(string value, string message)
    {
        using var database = Database.Open();
        database.Execute($"create table sample as select 'washer' as type, 'f' as family, {value} as calls");
        Assert.Equal(message, Assert.Throws<InvalidOperationException>(() => database.ReadTable<Counted>("sample")).Message);
    }

    [Fact]
    public void ReadTable_TextNullWhereItMustNotBe_NamesTableColumnAndRecord()
    {
        using var database = Database.Open();
        database.Execute("create table sample as select null::varchar as type, 'f' as family, 1 as calls");
        Assert.Equal("sample: column type of Counted is null.", Assert.Throws<InvalidOperationException>(() => database.ReadTable<Counted>("sample")).Message);
    }

    [Fact]
    public void ReadTable_UnknownEnumWord_NamesIt()
    {
        using var database = Database.Open();
        ResultTable.Write(database, "sample", [new Row("a", 1, 1, 1m, null, null, true, null)]);
        database.Execute("update sample set ending = 'lost'");
        Assert.Equal("sample: column ending of Row: 'lost' is no Ending.", Assert.Throws<InvalidOperationException>(() => database.ReadTable<Row>("sample")).Message);
    }
}
