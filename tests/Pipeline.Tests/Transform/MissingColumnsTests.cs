using PartsSignal.Pipeline.Running;

namespace PartsSignal.Pipeline.Tests.Transform;

/// <summary>Files without a column that most have: what stands in for it, and what is said of it.</summary>
public sealed class MissingColumnsTests : IDisposable
{
    private readonly SmallShop _shop = new();

    public void Dispose() => _shop.Dispose();

    [Fact]
    public async Task Load_LogWithoutCallDay_TheClosingDayCountsForIt()
    {
        Write("jobs.csv", "Job,Done,Says\n1,2026-08-03,no heat\n2,2026-08-04,leaks\n3,,leaks\n", "jobs", "\"job_id\": \"Job\", \"closed_on\": \"Done\", \"complaint\": \"Says\"");
        LoadReport report = await _shop.Load();
        Assert.Contains("No column of jobs.csv holds the day the customer called, so the closing day is used instead.", report.Assumptions);
        Assert.Equal(["1|2026-08-03|2026-08-03", "2|2026-08-04|2026-08-04"], _shop.Rows("from jobs select job_id, opened_on, closed_on order by 1"));
        Assert.Equal(["opened_on|missing"], _shop.Rows("from rejects select field, reason_code"));
    }

    [Fact]
    public async Task Load_ClosingDayWithoutYear_IsTheFirstAfterTheCall()
    {
        Write("jobs.csv", "Job,In,Done\n1,28.12.2025,2.1.\n2,03.08.2026,04/08\n3,03.08.2026,waiting for part\n4,03.08.2026,next week\n", "jobs", "\"job_id\": \"Job\", \"opened_on\": \"In\", \"closed_on\": \"Done\"", "\"dateOrder\": \"dmy\", ");
        await _shop.Load();
        Assert.Equal(["1|2026-01-02", "2|2026-08-04", "3|-"], _shop.Rows("from jobs select job_id, closed_on order by 1"));
        Assert.Equal(["closed_on|bad_date"], _shop.Rows("from rejects select field, reason_code"));
    }

    [Fact]
    public async Task Load_OrdersWithoutNumbers_EachDifferentRowIsAnOrder()
    {
        Write("jobs.csv", "Job,In\n1,2026-08-03\n", "jobs", "\"job_id\": \"Job\", \"opened_on\": \"In\"");
        _shop.Write("orders.csv", "Day,Part,Pieces\n2026-08-03,40-118,1\n2026-08-03,40-118,1\n2026-08-04,40-118,2\n");
        _shop.Write("shop.json", """
            {"sources": [{"files": "jobs.csv", "kind": "jobs", "columns": {"job_id": "Job", "opened_on": "In"}},
               {"files": "orders.csv", "kind": "part_orders", "columns": {"ordered_on": "Day", "part": "Part", "quantity": "Pieces"}}]}
            """);
        await _shop.Load();
        // One file says the same twice only where it happened twice.
        Assert.Equal(["2026-08-03|1", "2026-08-03|1", "2026-08-04|2"], _shop.Rows("from part_orders select ordered_on, quantity order by 1"));
        Assert.Equal(["2"], _shop.Rows("from part_orders select count(distinct order_id)"));
    }

    [Fact]
    public async Task Load_MachineRemovedAtNoDay_StaysInTheRegister()
    {
        Write("units.csv", "Serial,In,Out\nA1001,2020-01-05,\nA1002,2020-02-05,sent back\n", "units", "\"serial\": \"Serial\", \"installed_on\": \"In\", \"removed_on\": \"Out\"");
        await _shop.Load();
        Assert.Equal(["2"], _shop.Rows("from units select count(*)"));
        Assert.Equal(["0"], _shop.Rows("from rejects select count(*)"));
    }

    private void Write(string file, string text, string kind, string columns, string style = "")
    {
        _shop.Write(file, text);
        _shop.Write("shop.json", $$"""{"sources": [{"files": "{{file}}", "kind": "{{kind}}", {{style}}"columns": { {{columns}} } } ] }""");
    }
}
