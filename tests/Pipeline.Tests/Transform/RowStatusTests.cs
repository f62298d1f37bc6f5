using PartsSignal.Analysis.Sql;
using PartsSignal.Pipeline.Transform;

namespace PartsSignal.Pipeline.Tests.Transform;

public sealed class RowStatusTests
{
    private const string FileBooks = "from loads select source_file, rows_read, loaded, duplicate, replaced, rejected order by 1";

    [Fact]
    public void Combine_SameLogUnderTwoNames_CountsEverySecondRow()
    {
        using var shop = new TransformShop();
        shop.Add(new StagedJob("J1") { SourceOrder = 1 }, new StagedJob("J2") { SourceOrder = 1 })
            .Add(new StagedJob("J1") { SourceOrder = 2 }, new StagedJob("J2") { SourceOrder = 2 })
            .Add(new StagedJobPart("J1", "P-1") { SourceOrder = 1, SourceLine = 2 }, new StagedJobPart("J1", "P-1") { SourceOrder = 2, SourceLine = 2 })
            .Combine();
        Assert.Equal(["file-1.csv|2|2|0|0|0", "file-2.csv|2|0|2|0|0"], shop.Rows(FileBooks));
        Assert.Equal(["J1|file-1.csv", "J2|file-1.csv"], shop.Rows("from jobs select job_id, source_file order by 1"));
        Assert.Equal(["J1|1|P-1"], shop.Rows("from job_parts select job_id, line, part_raw"));
    }

    [Fact]
    public void Combine_NewerExport_ReplacesAndKeepsHistory()
    {
        using var shop = new TransformShop();
        shop.Add(new StagedJob("J1") { SourceOrder = 1, Outcome = "part_ordered", ClosedOn = null }, new StagedJob("J1") { SourceOrder = 2 })
            .Add(new StagedJobPart("J1", "OLD") { SourceOrder = 1, SourceLine = 2 }, new StagedJobPart("J1", "NEW") { SourceOrder = 2, SourceLine = 2 })
            .Combine();
        Assert.Equal(["file-1.csv|1|0|0|1|0", "file-2.csv|1|1|0|0|0"], shop.Rows(FileBooks));
        Assert.Equal(["J1|part_ordered|file-2.csv|2"], shop.Rows("from job_history select job_id, outcome, replaced_by_file, replaced_by_line"));
        Assert.Equal(["NEW"], shop.Rows("from job_parts select part_raw"));
    }

    [Fact]
    public void Combine_DatedRows_LaterChangeWinsWhateverTheOrder()
    {
        using var shop = new TransformShop();
        shop.Add(
            new StagedJob("J1") { SourceOrder = 1, Outcome = "fixed_with_part", UpdatedOn = new(2024, 5, 2) },
            new StagedJob("J1") { SourceOrder = 2, Outcome = "part_ordered", UpdatedOn = new(2024, 5, 1) }).Combine();
        Assert.Equal(["fixed_with_part"], shop.Rows("from jobs select outcome"));
    }

    [Fact]
    public void Combine_OneUndatedRow_OrderOfSourcesDecides()
    {
        using var shop = new TransformShop();
        shop.Add(
            new StagedJob("J1") { SourceOrder = 1, Outcome = "fixed_with_part", UpdatedOn = new(2024, 5, 2) },
            new StagedJob("J1") { SourceOrder = 2, Outcome = "part_ordered" }).Combine();
        Assert.Equal(["part_ordered"], shop.Rows("from jobs select outcome"));
    }

    [Fact]
    public void Combine_JobOnSeveralRows_KeepsEveryPart()
    {
        using var shop = new TransformShop();
        shop.OnePartPerRow(1)
            .Add(
                new StagedJob("J1") { SourceOrder = 1, RowHash = "a" },
                new StagedJob("J1") { SourceOrder = 1, RowHash = "b" },
                new StagedJob("J1") { SourceOrder = 1, RowHash = "b" })
            .Add(
                new StagedJobPart("J1", "P1") { SourceOrder = 1, SourceLine = 2 },
                new StagedJobPart("J1", "P2") { SourceOrder = 1, SourceLine = 3 },
                new StagedJobPart("J1", "P2") { SourceOrder = 1, SourceLine = 4 })
            .Combine();
        Assert.Equal(["file-1.csv|3|3|0|0|0"], shop.Rows(FileBooks));
        Assert.Equal(["J1"], shop.Rows("from jobs select job_id"));
        Assert.Equal(["1|P1", "2|P2", "3|P2"], shop.Rows("from job_parts select line, part_raw order by 1"));
    }

    [Fact]
    public void Combine_PartsApart_OrphanIsARejectAndSecondPieceIsNot()
    {
        using var shop = new TransformShop();
        shop.Add(new StagedJob("J1") { SourceOrder = 1 })
            .Add(
                new StagedJobPart("J1", "P1") { SourceOrder = 2, WithJobRow = false },
                new StagedJobPart("J1", "P1") { SourceOrder = 2, WithJobRow = false },
                new StagedJobPart("J9", "P1") { SourceOrder = 2, WithJobRow = false })
            .Add(new StagedJobPart("J1", "P1") { SourceOrder = 3, WithJobRow = false })
            .Combine();
        Assert.Equal(["file-1.csv|1|1|0|0|0", "file-2.csv|3|2|0|0|1", "file-3.csv|1|0|1|0|0"], shop.Rows(FileBooks));
        Assert.Equal(["file-2.csv|4|unknown_job"], shop.Rows("from rejects select source_file, source_line, reason_code"));
    }

    [Fact]
    public void Combine_OrderLineReceivedLater_IsReplaced()
    {
        using var shop = new TransformShop();
        shop.Add(
            new StagedOrder("O1", "Haldor", "P1") { SourceOrder = 1 },
            new StagedOrder("O1", "Haldor", "P1") { SourceOrder = 2, ReceivedOn = new(2024, 1, 15) }).Combine();
        Assert.Equal(["1|2024-01-15"], shop.Rows("from part_orders select line, received_on"));
    }

    [Fact]
    public void Check_CountBelowZero_IsFoundThoughTheRowsAddUp()
    {
        using var shop = new TransformShop();
        shop.Database.Execute("create table loads as select 'a.csv' as source_file, 3 as rows_read, 2 as loaded, 0 as duplicate, 2 as replaced, -1 as rejected");
        Assert.Contains("loads.checks.sql: 1 offending rows", Assert.Throws<InvalidDataException>(() => ResultRunner.Check(shop.Database, "marts/loads.checks.sql")).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void RequireBalance_MissingRow_NamesTheFile() => Assert.Contains(
        "b.csv: read 3", Assert.Throws<InvalidDataException>(new Reconciliation([new("a.csv", "jobs", 1, 1, 0, 0, 0), new("b.csv", "jobs", 3, 1, 1, 0, 0)]).RequireBalance).Message);
}
