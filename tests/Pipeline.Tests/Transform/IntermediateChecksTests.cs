using PartsSignal.Analysis.Sql;

namespace PartsSignal.Pipeline.Tests.Transform;

/// <summary>Each check beside a shared table finds a row that must not be there.</summary>
public sealed class IntermediateChecksTests(CheckedShop checkedShop) : IClassFixture<CheckedShop>
{
    private static readonly SqlModel[] Checked =
        [.. SqlModels.In("intermediate").Where(m => !m.IsView && SqlText.Exists(m.Checks))];

    private readonly TransformShop _shop = checkedShop.Shop;

    [Fact]
    public void Checks_RowWithoutValues_IsFound()
    {
        Assert.NotEmpty(Checked);
        Assert.All(Checked, model => AssertFound(model.Table, $"insert into {model.Table} default values"));
    }

    [Fact]
    public void Checks_RowThatIsThereTwice_IsFoundWhereTheGrainIsChecked()
    {
        string[] filled = [.. Checked
            .Where(m => SqlText.Read(m.Checks).Contains("having count(*) > 1", StringComparison.Ordinal) && _shop.Database.Count(m.Table) > 0)
            .Select(m => m.Table)];
        Assert.InRange(filled.Length, 14, int.MaxValue);
        Assert.All(filled, table => AssertFound(table, $"insert into {table} from {table} limit 1"));
    }

    // A load of few rows makes tables where one of many makes views.
    [Fact]
    public void Combine_SessionThatHoldsLittle_MakesTheSameTables()
    {
        using TransformShop large = CheckedShop.Combined(holdsLittle: false);
        Assert.All(SqlModels.In("marts").Concat(SqlModels.In("intermediate")).Where(m => large.Database.Has(m.Table)), m =>
            Assert.Equal(large.Rows($"from {m.Table}").Order(StringComparer.Ordinal), _shop.Rows($"from {m.Table}").Order(StringComparer.Ordinal)));
    }

    private void AssertFound(string table, string mutation)
    {
        SqlModel model = SqlModels.Find(table)!;
        ResultRunner.CheckMade(_shop.Database, model);
        _shop.Database.Execute("begin transaction");
        _shop.Database.Execute(mutation);
        Exception? fault = Record.Exception(() => ResultRunner.CheckMade(_shop.Database, model));
        _shop.Database.Execute("rollback");
        Assert.IsType<InvalidDataException>(fault);
    }
}

/// <summary>A shop with a row in most tables, all of which are made. A test that changes anything undoes it.</summary>
public sealed class CheckedShop : IDisposable
{
    public CheckedShop() =>
        ResultRunner.Build(
            Shop.Database,
            [.. SqlModels.In("intermediate").Where(m => !Shop.Database.Has(m.Table))],
            TimeProvider.System,
            ("as_of", null));

    internal TransformShop Shop { get; } = Combined(holdsLittle: true);

    public void Dispose() => Shop.Dispose();

    internal static TransformShop Combined(bool holdsLittle)
    {
        var shop = new TransformShop(holdsLittle);
        return shop.Add(
                new StagedJob("J1") { SourceOrder = 1, SerialKey = "S1", PlaceKey = "A1", ModelRaw = "QU-LT 100", Brand = "Orvane", SerialCandidates = "2016-01-01/2016-01-31" },
                new StagedJob("J2") { SourceOrder = 1, SerialKey = "S1", PlaceKey = "A1", ModelRaw = "QU-LT 100", Brand = "Orvane", OpenedOn = new DateOnly(2024, 5, 6), ClosedOn = new DateOnly(2024, 5, 7) },
                new StagedJob("J3") { SourceOrder = 1, PlaceKey = "A1", ModelRaw = "QU-LT 100", Brand = "Orvane" },
                new StagedJob("J3") { SourceOrder = 2, PlaceKey = "A1", ModelRaw = "QU-LT 100", Brand = "Orvane", Outcome = "declined" })
            .Add(new StagedModel("QU-LT 100", "QU-LT"), new StagedModel("QU-LT 200", "QU-LT"))
            .Add(new StagedUnit("S1") { SourceOrder = 3, PlaceKey = "A1", ModelRaw = "QU-LT 100" })
            .Add(new StagedPart("AB-100") { SourceOrder = 4, Component = "inlet_valve" }, new StagedPart("AB-200") { SourceOrder = 4, Component = "inlet_valve" })
            .Add(new StagedArrow("AB-100", "AB-200") { SourceOrder = 5 })
            .Add(new StagedAlias("Brixomere", "BX-9", "AB-200") { SourceOrder = 6 })
            .Add(new StagedOrder("O1", "Brixomere", "BX-9") { SourceOrder = 7 })
            .Add(
                new StagedJobPart("J1", "AB-100") { SourceOrder = 8 },
                new StagedJobPart("J2", "AB-200") { SourceOrder = 8 },
                new StagedJobPart("J2", "AB-100") { SourceOrder = 8 },
                new StagedJobPart("J9", "AB-100") { SourceOrder = 8 })
            .Combine();
    }
}
