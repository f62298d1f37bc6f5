namespace PartsSignal.Pipeline.Tests.Transform;

/// <summary>A serial of one or two characters tells machines apart where the register lists it, and nowhere else.</summary>
public sealed class ShortSerialsTests : IDisposable
{
    private const string Jobs = "Job,Opened,Machine,Fault\n1,2026-08-03,7,no heat\n2,2026-08-04,12,no heat\n3,2026-08-05,7,noisy\n4,2026-08-06,x,noisy\n5,2026-08-07,x,noisy\n";
    private readonly SmallShop _shop = new();

    public ShortSerialsTests() => _shop.Write("jobs.csv", Jobs).Write("machines.csv", "No,Model\n7,QD 1\n12,QD 2\n99,QD 3\n").Write("shop.json", """
        { "sources": [
          { "files": "jobs.csv", "kind": "jobs", "columns": { "job_id": "Job", "opened_on": "Opened", "serial": "Machine", "complaint": "Fault" } },
          { "files": "machines.csv", "kind": "units", "columns": { "serial": "No", "model": "Model" } } ] }
        """);

    public void Dispose() => _shop.Dispose();

    [Fact]
    public async Task Load_SerialsThatTheRegisterLists_TellMachinesApart()
    {
        await _shop.Load();
        Assert.Equal(["1,3", "2"], _shop.Rows("from jobs select string_agg(job_id, ',' order by job_id) where unit_id is not null group by unit_id order by 1"));
        Assert.Equal(["4", "5"], _shop.Rows("from jobs select job_id where unit_id is null order by 1"));
        Assert.Equal(["3|2"], _shop.Rows("from units select count(*), count(*) filter (where unit_id in (from jobs select unit_id))"));
    }

    [Fact]
    public async Task Load_NoRegister_ShortSerialsTellNothing()
    {
        File.Delete(Path.Combine(_shop.Input, "machines.csv"));
        _shop.Write("shop.json", """{ "sources": [ { "files": "jobs.csv", "kind": "jobs", "columns": { "job_id": "Job", "opened_on": "Opened", "serial": "Machine", "complaint": "Fault" } } ] }""");
        await _shop.Load();
        Assert.Equal(["0"], _shop.Rows("from jobs select count(unit_id)"));
    }
}
