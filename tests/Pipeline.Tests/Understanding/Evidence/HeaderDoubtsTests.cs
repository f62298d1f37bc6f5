using System.Globalization;
using PartsSignal.Pipeline.Understanding;

namespace PartsSignal.Pipeline.Tests.Understanding.Evidence;

/// <summary>Cells that would do for several things are asked about unless the header says which.</summary>
public sealed class HeaderDoubtsTests
{
    private const int Rows = 100;

    [Theory]
    [InlineData("closed_on", "Closed on", false)]
    [InlineData("closed_on", "Date completed", false)]
    [InlineData("closed_on", "Erledigt am", false)]
    [InlineData("closed_on", "Invoice date", true)]
    [InlineData("closed_on", "Visit day", true)]
    [InlineData("closed_on", "XZ7", true)]
    [InlineData("job_id", "Job no", false)]
    [InlineData("job_id", "Sort order", true)]
    [InlineData("job_id", "No", true)]
    [InlineData("quantity", "Qty", false)]
    [InlineData("quantity", "Prio", true)]
    [InlineData("labour", "Labour minutes", false)]
    [InlineData("labour", "Grand total", true)]
    [InlineData("model", "Model", false)]
    [InlineData("model", "XZ7", true)]
    public void Are_CellsOfManyMeanings_DependOnTheHeader(string field, string header, bool doubted)
    {
        TableEvidence table = Table((header, i => field == "closed_on" ? new DateOnly(2026, 1, 1).AddDays(i * 3).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) : field == "job_id" ? $"{i + 1}" : $"{1 + (i % 3)}"));
        Assert.Equal(doubted, Are(table, field, (field, 0)));
    }

    [Theory]
    [InlineData(1, true)]
    [InlineData(2, false)]
    public void Are_VansThatHaveNothingToDoWithTechnicians_AreADoubt(int rows, bool doubted)
    {
        TableEvidence table = Table(("Van", i => $"V-{i / rows % 2}"), ("Technician", i => i / 2 % 2 == 0 ? "Ada" : "Ben"));
        Assert.Equal(doubted, Are(table, "van", ("van", 0), ("technician", 1)));
    }

    private static bool Are(TableEvidence table, string field, params (string Field, int Column)[] given)
    {
        IReadOnlyList<string> fields = KindFields.Of("jobs");
        int[] columns = [.. fields.Select(f => Array.Find(given, g => g.Field == f) is { Field: not null } found ? found.Column : -1)];
        return HeaderDoubts.IsUnclear(table, new FieldChoice("jobs", columns, new double[table.Columns.Count, fields.Count]), ((IList<string>)fields).IndexOf(field));
    }

    private static TableEvidence Table(params (string Header, Func<int, string> Cell)[] columns) => ShopEvidence.Of(
        [new TableSample("a.csv", null, Rows, [.. columns.Select((c, at) => Column(c.Header, at, [.. Enumerable.Range(0, Rows).Select(c.Cell)]))])],
        HeaderLexicon.Shipped).Tables[0];

    private static ColumnSample Column(string header, int at, string[] cells)
    {
        var values = new ValueSet();
        Array.ForEach(cells, c => values.Add(c));
        return new ColumnSample(header, at, cells) { Values = values };
    }
}
