using PartsSignal.Pipeline.Understanding;

namespace PartsSignal.Pipeline.Tests.Understanding.Evidence;

public sealed class EvidenceTests
{
    private static readonly string[] Models = ["WX100-1", "WX100-1", "WX100-2", "WX200-1", "WX200-1", "WX200-2", "WX100-2", "WX200-2", "WX100-1", "WX200-1", "WX100-2", "WX200-2"];

    [Fact]
    public void Rows_ModelBeginsWithFamily_FamilyIsItsStartAndDeterminedByIt()
    {
        FeatureList family = Of(1, Column("Model", 0, Models), Column("Family", 1, [.. Models.Select(m => m[..5])]));
        Assert.Equal(FeatureList.Top, LevelOf(family, "start_of_other"));
        Assert.Equal(FeatureList.Top, LevelOf(family, "determined"));
    }

    [Fact]
    public void Rows_QuantityTimesPrice_TotalAndFactorsAreKnown()
    {
        string[] pieces = ["2", "3", "4", "2", "5", "3", "2", "4"];
        string[] prices = ["10.50", "3.20", "7.25", "8.10", "2.40", "9.99", "12.30", "6.05"];
        ColumnSample[] columns = [Column("a", 0, pieces), Column("b", 1, prices), Column("c", 2, [.. pieces.Zip(prices, (q, p) => (decimal.Parse(q, Invariant) * decimal.Parse(p, Invariant)).ToString(Invariant))])];
        Assert.Equal(FeatureList.Top, LevelOf(Of(2, columns), "total"));
        Assert.Equal(FeatureList.Top, LevelOf(Of(0, columns), "factor"));
        Assert.Equal(0, LevelOf(Of(2, columns), "factor"));
    }

    [Fact]
    public void Dates_ClosedAfterOpened_OrderAndGapAreKnown()
    {
        string[] opened = ["2026-01-05", "2026-01-09", "2026-02-02", "2026-02-11"];
        string[] closed = ["2026-01-08", "2026-01-12", "2026-02-05", "2026-02-14"];
        ColumnSample[] columns = [Column("a", 0, closed), Column("b", 1, opened)];
        Assert.Equal(FeatureList.Top, LevelOf(Of(0, columns), "last_of_dates"));
        Assert.Equal(FeatureList.Top, LevelOf(Of(1, columns), "first_of_dates"));
        Assert.Equal(0, LevelOf(Of(1, columns), "last_of_dates"));

        // Three days after the start: the seventh step of the scale.
        Assert.Equal(6, LevelOf(Of(0, columns), "days_after_start"));
    }

    [Fact]
    public void Relations_PartLinesNameJobs_PointToTheKeyOfTheLog()
    {
        string[] jobs = [.. Enumerable.Range(100, 20).Select(i => $"J{i}")];
        var log = new TableSample("log.csv", null, 20, [Column("Job", 0, jobs), Column("Text", 1, [.. jobs.Select(j => "no heat " + j)])]);
        var lines = new TableSample("lines.csv", null, 30, [Column("Ref", 0, [.. Enumerable.Range(0, 30).Select(i => jobs[i % 15])]), Column("Part", 1, [.. Enumerable.Range(0, 30).Select(i => $"P-{i}")])]);
        var relations = new ShopRelations([log, lines]);
        ShopRelations.Link link = Assert.Single(relations.PointsTo(lines.Columns[0]));
        Assert.Equal((log, "Job", 1.0), (link.Table, link.Column.Name, link.Share));
        Assert.Empty(relations.PointsTo(log.Columns[0]));
        Assert.Single(relations.PointedAtBy(log.Columns[0]));
    }

    [Fact]
    public void Text_Evidence_ReadsAsWritten()
    {
        var column = new ColumnEvidence("job no", true, [0, 7, 15], [3], [1, 2], [new ColumnLink(2, 5, 87, true)], [0, 15, 3]);
        ColumnEvidence read = EvidenceText.Read(EvidenceText.Line(column, _ => 4).Split(' '));
        Assert.Equal(("4", true), (read.Header, read.IsFilled));
        Assert.Equal(column.Levels, read.Levels);
        Assert.Equal(column.Links, read.Links);
    }

    [Fact]
    public void RowSample_ManyRows_KeepsSomeFromFirstToLast()
    {
        var sample = new RowSample(8);
        for (int i = 0; i < 1000; i++)
        {
            if (sample.WantsNext)
            {
                sample.Keep([i.ToString(Invariant)]);
            }
            else
            {
                sample.Skip();
            }
        }

        int[] kept = [.. sample.Rows.Select(r => int.Parse(r[0], Invariant))];
        Assert.InRange(kept.Length, 4, 8);
        Assert.Equal(0, kept[0]);
        Assert.Single(kept.Zip(kept.Skip(1), (a, b) => b - a).Distinct());
        Assert.True(kept[^1] >= 500);
    }

    private static System.Globalization.CultureInfo Invariant => System.Globalization.CultureInfo.InvariantCulture;

    private static FeatureList Of(int at, params ColumnSample[] columns)
    {
        var table = new TableSample("t.csv", null, columns[0].Cells.Length, columns);
        return ColumnFeatures.Of(table, at, new RowFeatures(table), new ShopRelations([table]));
    }

    private static ColumnSample Column(string name, int index, string[] cells)
    {
        var values = new ValueSet();
        foreach (string cell in cells.Where(c => c.Length > 0))
        {
            values.Add(cell);
        }

        return new ColumnSample(name, index, cells) { Values = values };
    }

    private static int LevelOf(FeatureList list, string name) => list.Levels[((IList<string>)list.Names).IndexOf(name)];
}
