using PartsSignal.Analysis.Sql;

namespace PartsSignal.Analysis.Tests.Sql;

public sealed class SqlModelsTests
{
    [Fact]
    public void Order_AnyOrderOfWantedTables_IsTheSameAndReadsOnlyWhatIsMade()
    {
        SqlModel[] marts = [.. SqlModels.In("marts")];
        IReadOnlyList<SqlModel> order = SqlModels.Order(marts, _ => false);
        Assert.Equal(order, SqlModels.Order(marts.Reverse(), _ => false));
        var made = new HashSet<string>(StringComparer.Ordinal);
        Assert.All(order, model =>
        {
            Assert.DoesNotContain(model.Reads, t => SqlModels.Find(t) is not null && !made.Contains(t));
            made.Add(model.Table);
        });
    }

    [Fact]
    public void Order_TableThatExists_IsMadeOnlyWhenWanted()
    {
        SqlModel supplier = SqlModels.Find("supplier_counts")!;
        string[] Names(Func<string, bool> exists, params SqlModel[] wanted) => [.. SqlModels.Order(wanted, exists).Select(m => m.Table)];
        Assert.Equal(["supplier_counts"], Names(_ => true, supplier));
        Assert.Equal(["int_part_followups", "supplier_counts"], Names(_ => true, supplier, SqlModels.Find("int_part_followups")!));
        Assert.Contains("int_part_followups", Names(StoreTables.Names.Contains, supplier));
    }

    [Fact]
    public void Order_Circle_IsNamed()
    {
        var one = new SqlModel("intermediate/one.sql", Materialization.Table, ["two"]);
        var two = new SqlModel("intermediate/two.sql", Materialization.Table, ["one"]);
        var fault = Assert.Throws<InvalidDataException>(() => SqlModels.Order([one], _ => false, t => t == "one" ? one : two));
        Assert.Contains("one.sql", fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void All_EveryTable_LeadsToTheStoreOrToAResult()
    {
        string[] reached = [.. SqlModels.Order(SqlModels.All.Where(m => m.IsStored || m.Path.StartsWith("results/", StringComparison.Ordinal)), _ => false).Select(m => m.Table), "int_as_of"];
        Assert.Empty(SqlModels.All.Select(m => m.Table).Except(reached));
    }

    [Fact]
    public void All_StoreTables_HaveAContractAndAQuery() =>
        Assert.Equal(StoreTables.Names.Order(StringComparer.Ordinal), SqlModels.In("marts").Select(m => m.Table));
}
