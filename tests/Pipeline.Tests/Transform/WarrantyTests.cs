using PartsSignal.Analysis.Sql;

namespace PartsSignal.Pipeline.Tests.Transform;

/// <summary>A yes/no column of the job log, followed from the file to the store, the rates and the report.</summary>
public sealed class WarrantyTests
{
    [Fact]
    public async Task Load_LogThatTellsWarranty_ReachesStoreRatesAndReport()
    {
        using SmallShop shop = await Shop("J1,2026-08-03,yes,P1\nJ2,2026-08-04,no,P1\nJ3,2026-08-05,,P1\nJ4,2026-08-06,n,P1\n");
        Assert.Equal(["J1|True", "J2|False", "J3|-", "J4|False"], shop.Rows("from jobs select job_id, warranty order by 1"));
        using Database database = shop.Open();
        ResultRunner.Build(database, ResultModels.Rates, TimeProvider.System, ("as_of", null), ("callback_days", 30), ("rate_from", null), ("rate_to", null));
        Assert.Equal(
            ["no|2", "unknown|1", "yes|1"],
            database.Query("select group_value, calls from rate_groups where grouping_kind = 'warranty' order by 1", r => $"{r.GetString(0)}|{r.GetInt64(1)}"));
        Assert.Contains("warranty 3 of 4", database.Read("queries/report/told_columns.sql", r => $"{r.GetString(0)} {r.GetInt64(1)} of {r.GetInt64(2)}"));
    }

    [Fact]
    public async Task Load_RowsOfOneJobThatDifferOnlyInWarranty_AreListedAndTheLastCounts()
    {
        using SmallShop shop = await Shop("J1,2026-08-03,yes,P1\nJ1,2026-08-03,no,P1\n");
        Assert.Equal(["2|0"], shop.Rows("from loads select loaded, replaced"));
        Assert.Equal(["J1|Lines 2, 3 differ in warranty; line 3 speaks for the job."], shop.Rows("from data_faults select subject, message"));
        Assert.Equal(["False"], shop.Rows("from jobs select warranty"));
    }

    private static async Task<SmallShop> Shop(string rows)
    {
        var shop = new SmallShop();
        shop.Write("jobs.csv", "Job,Date in,Warranty,Part\n" + rows);
        shop.Write("shop.json", """{ "sources": [ { "files": "jobs.csv", "kind": "jobs", "columns": { "job_id": "Job", "opened_on": "Date in", "warranty": "Warranty", "part": "Part" } } ] }""");
        await shop.Load();
        return shop;
    }
}
