using DuckDB.NET.Data;
using PartsSignal.Analysis.Sql;
using PartsSignal.Pipeline.Core;

namespace PartsSignal.Pipeline.Tests.Core;

public sealed class MemoryRetryTests
{
    private const string Hungry = "create or replace table t as from range(400000) select md5(range::varchar) as text order by 1";

    [Fact]
    public void Run_StepThatTheFirstLimitCannotHold_RunsAgainWithMore()
    {
        using Database database = Database.Open(new DatabaseOptions { Threads = 1 });
        int tries = 0;
        MemoryRetry.Run(database, ["8MB", "512MB"], () =>
        {
            tries++;
            database.Execute(Hungry);
        });
        Assert.Equal(2, tries);
        Assert.Equal(400_000, database.Count("t"));
    }

    [Fact]
    public void Run_NoLimitThatIsEnough_SaysSo()
    {
        using Database database = Database.Open(new DatabaseOptions { Threads = 1 });
        Assert.Throws<DuckDBException>(() => MemoryRetry.Run(database, ["8MB"], () => database.Execute(Hungry)));
    }

    [Fact]
    public void Run_AnyOtherFault_IsNotTriedAgain()
    {
        using Database database = Database.Open();
        int tries = 0;
        Assert.Throws<DuckDBException>(() => MemoryRetry.Run(database, ["64MB", "512MB"], () =>
        {
            tries++;
            database.Execute("from no_such_table");
        }));
        Assert.Equal(1, tries);
    }
}
