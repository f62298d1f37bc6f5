namespace PartsSignal.Pipeline.Tests.Transform;

/// <summary>A register may know only the year or the month in which a machine went into service.</summary>
public sealed class ApproximateDaysTests
{
    [Fact]
    public async Task Load_RegisterWithYearsAndMonths_TakesTheirMiddle()
    {
        using var shop = new SmallShop();
        shop.Write("jobs.csv", "Job,Opened,Serial,Fault\n1,2026-08-03,S100,no heat\n")
            .Write("units.csv", "Serial,In service,Gone\nS100,2022,\nS101,2023-05,2025\nS102,2024-03-09,\nS103,long ago,\n")
            .Write("shop.json", """
                { "sources": [
                  { "files": "jobs.csv", "kind": "jobs", "columns": { "job_id": "Job", "opened_on": "Opened", "serial": "Serial", "complaint": "Fault" } },
                  { "files": "units.csv", "kind": "units", "columns": { "serial": "Serial", "installed_on": "In service", "removed_on": "Gone" } } ] }
                """);
        await shop.Load();
        Assert.Equal(["2022-07-02|-", "2023-05-16|2025-07-02", "2024-03-09|-"], shop.Rows("from units select installed_on, removed_on order by 1"));
        Assert.Equal(["5"], shop.Rows("from rejects select source_line"));
    }
}
