using PartsSignal.Pipeline.Understanding;

namespace PartsSignal.Pipeline.Tests.Understanding.Evidence;

/// <summary>Where the cells speak against the header, they weigh more.</summary>
public sealed class CellDoubtsTests
{
    [Theory]
    [InlineData("outcome", "MI MN OH TX MI OH", true)]
    [InlineData("outcome", "fixed declined fixed open fixed closed", false)]
    [InlineData("appliance_type", "preventive corrective preventive inspection corrective preventive", true)]
    [InlineData("appliance_type", "washer dryer oven washer fridge dryer", false)]
    [InlineData("labour", "488799101 444557215 488799102 444557216 488799103 444557217", true)]
    [InlineData("labour", "30 45 60 90 15 30", false)]
    [InlineData("opened_on", "13 14 15 16 17 18", true)]
    [InlineData("opened_on", "2026-01-05 2026-01-06 2026-01-07 2026-01-08 2026-01-09 2026-01-10", false)]
    [InlineData("price", "0.0121 0.0154 0.031 0.0087 0.0222 0.0119", true)]
    [InlineData("price", "12.5 0.95 7.25 30 18.9 4.15", false)]
    public void Are_CellsOfSomethingElse_AreADoubt(string field, string cells, bool doubted) =>
        Assert.Equal(doubted, CellDoubts.Are(Table(cells), 0, field));

    [Theory]
    [InlineData("appliance_type", "preventive corrective preventive inspection corrective preventive", 0, 0.1)]
    [InlineData("component", "mechanical electrical hydraulic mechanical electrical mechanical", 0, 0.1)]
    [InlineData("component", "frumpet blonk frumpet grintle blonk frumpet", 0.5, 0.7)]
    [InlineData("component", "pump belt motor pump valve belt", 1, 1)]
    [InlineData("appliance_type", "frumpet blonk frumpet grintle blonk frumpet", 1, 1)]
    [InlineData("part", "12.50 7.25 12.50 30.00 7.25 18.90", 0, 0.1)]
    [InlineData("part", "10572.42 11210.91 10572.42 13004.07 11210.91 12118.56", 1, 1)]
    [InlineData("part", "1 2 3 4 5 6", 0, 0.1)]
    [InlineData("part", "40112 40107 40112 40199 40107 40112", 1, 1)]
    [InlineData("quantity", "1 2 3 4 5 6", 0, 0.1)]
    [InlineData("quantity", "1 2 1 1 4 1", 1, 1)]
    [InlineData("quantity", "0.75 1.5 1 0.5 2 1.25", 0, 0.1)]
    [InlineData("closed_on", "comp2 comp4 comp1 comp2 comp3 comp2", 0, 0.1)]
    [InlineData("closed_on", "2026-01-05 2026-01-06 waiting 2026-01-08 2026-01-09 2026-01-10", 1, 1)]
    public void Most_CellsOfSomethingElse_LeaveLittle(string field, string cells, double least, double most) =>
        Assert.InRange(CellDoubts.Most(Table(cells), 0, field, "jobs"), least, most);

    [Fact]
    public void Most_PartsListThatNumbersItsParts_LeavesThemNumbers() => Assert.Equal(1, CellDoubts.Most(Table("1 2 3 4 5 6"), 0, "part", "parts"));

    [Theory]
    [InlineData("1 2 3 4 5 6", true)]
    [InlineData("2041 2042 2043 2044 2045 2046", false)]
    [InlineData("1 3 2 4 6 5", false)]
    [InlineData("1 1 2 3 4 5", false)]
    public void AreRowNumbers_OnlyNumbersFromOneThatRiseByRow_Are(string cells, bool expected) => Assert.Equal(expected, CellDoubts.AreRowNumbers(Table(cells), 0));

    private static TableEvidence Table(string cells)
    {
        string[] texts = cells.Split(' ');
        var values = new ValueSet();
        Array.ForEach(texts, t => values.Add(t));
        return ShopEvidence.Of([new TableSample("a.csv", null, texts.Length, [new ColumnSample("a", 0, texts) { Values = values }])], HeaderLexicon.Shipped).Tables[0];
    }
}
