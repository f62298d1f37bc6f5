using System.Net;
using System.Text.RegularExpressions;
using PartsSignal.Pipeline.Bench;

namespace PartsSignal.EndToEnd.Tests.Bench;

/// <summary>What an owner who has only the pages is told, and can do.</summary>
public sealed partial class OwnerPagesTests
{
    private const string Head = "Job number,Call date,Finished,Make,Model number,Customer says,Part 1\n";
    private const string Log = Head
        + "J1,2026-06-03,2026-06-04,Orvane,WE100,does not heat,P100\n"
        + "J2,2026-07-04,2026-07-05,Orvane,WE100,leaks,P200\n"
        + "J3,2026-08-05,2026-08-06,Orvane,WE100,leaks,P200\n";

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Months_WithoutAReport_AreMadeWithAButtonAndOldFiguresSaySo()
    {
        var clock = new DayClock(new DateOnly(2026, 9, 19));
        await using RunningBench bench = await RunningBench.StartAsync(clock);
        ShopFolder shop = bench.Shops.Add("Millrace");
        await File.WriteAllTextAsync(Path.Combine(shop.Files, "jobs.csv"), Log, Stop);
        using HttpClient client = await bench.ClientWithCookieAsync();
        await UpdateAsync(client, bench);
        string results = await PageAsync(client, "/results");
        Assert.Contains("There is no report of August 2026 yet, because your files end on August 5, 2026, before the month was over.", results, StringComparison.Ordinal);

        Assert.DoesNotContain("days ago", results, StringComparison.Ordinal);

        string months = await PageAsync(client, "/months");
        Assert.Contains("/reports/2026-07/index.html", months, StringComparison.Ordinal);
        Assert.Contains("value=\"2026-06\"", months, StringComparison.Ordinal);
        Assert.Contains("value=\"2026-08\"", months, StringComparison.Ordinal);
        Assert.DoesNotContain("partssignal report", months, StringComparison.Ordinal);

        await PostAsync(client, "/months/make", ("month", "2026-08"));
        await bench.Work.WhenIdleAsync();
        string done = await PageAsync(client, "/run");
        Assert.Contains("The report of August 2026 is ready.", done, StringComparison.Ordinal);
        Assert.Contains("/reports/2026-08/index.html", done, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.OK, (await client.GetAsync("/reports/2026-08/index.html", Stop)).StatusCode);
        Assert.DoesNotContain("There is no report of August", await PageAsync(client, "/results"), StringComparison.Ordinal);

        // A month without calls, or no month at all, starts nothing.
        WorkState before = bench.Work.Now;
        await PostAsync(client, "/months/make", ("month", "../../2026-08"));
        await PostAsync(client, "/months/make", ("month", "2031-01"));
        Assert.Same(before, bench.Work.Now);

        // A day later the data is old.
        clock.Day = new DateOnly(2026, 9, 20);
        foreach (string page in new[] { "/results", "/vans", "/waiting", "/ask", "/months", "/reports/2026-07/index.html" })
        {
            Assert.Contains("The files end on August 5, 2026, 46 days ago. Odds, prices and van contents may have changed. Add newer files, then update the figures.", await PageAsync(client, page), StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Update_FilesThatCannotBeRead_AreNamedAndResultsSayWhatChangedSince()
    {
        await using RunningBench bench = await RunningBench.StartAsync();
        ShopFolder shop = bench.Shops.Add("Millrace");
        using HttpClient client = await bench.ClientWithCookieAsync();
        string files = await AddAsync(client, ("jobs.csv", Log + "J4,2026-13-09,2026-08-10,Orvane,WE100,leaks,P200\n"), ("empty.csv", ""), ("payroll.csv", "Person,Hours,Rate\nAnn,38,21\nBo,40,20\n"));
        Assert.Contains("3 files added: empty.csv, jobs.csv, payroll.csv.", files, StringComparison.Ordinal);
        Assert.Contains("empty.csv: The file is empty. Export it again, or remove it.", files, StringComparison.Ordinal);
        Assert.Contains("name=\"file\" value=\"payroll.csv\"", files, StringComparison.Ordinal);
        Assert.DoesNotContain("evil", await PageAsync(client, "/files?added=evil.csv"), StringComparison.Ordinal);

        await UpdateAsync(client, bench);
        string done = await PageAsync(client, "/run");
        Assert.Contains("<li>1 file read with 4 rows: 3 jobs. 1 row refused.</li>", done, StringComparison.Ordinal);
        Assert.Contains("<li>2 files not read: empty.csv, payroll.csv. Rows says why.</li>", done, StringComparison.Ordinal);
        Assert.Contains("<li>Report of July 2026 made.</li>", done, StringComparison.Ordinal);
        Assert.Contains("before the month was over.</li>", done, StringComparison.Ordinal);
        Assert.Contains("<li>No van list was made: no prices are known for the parts, so we cannot plan to a budget. Add a price list, or orders with prices.</li>", done, StringComparison.Ordinal);
        Assert.Contains("No van list was made: no prices are known for the parts", await PageAsync(client, "/vans"), StringComparison.Ordinal);
        Assert.DoesNotContain(Since, await PageAsync(client, "/results"), StringComparison.Ordinal);
        Assert.Contains("(now)", await PageAsync(client, "/history"), StringComparison.Ordinal);

        await AddAsync(client, ("more.csv", Log));
        Assert.Contains(Since + "more.csv added.", await PageAsync(client, "/results"), StringComparison.Ordinal);
        string history = await PageAsync(client, "/history");
        Assert.Contains(Since + "more.csv added.", history, StringComparison.Ordinal);
        Assert.DoesNotContain("(now)", history, StringComparison.Ordinal);
        await PostAsync(client, "/files/remove", ("file", "more.csv"));
        Assert.DoesNotContain(Since, await PageAsync(client, "/results"), StringComparison.Ordinal);

        await AddAsync(client, ("later.csv", Head + "J9,2026-08-09,2026-08-10,Orvane,WE100,leaks,P200\n"));
        string rows = await PageAsync(client, "/rows");
        Assert.Matches("<dt>empty.csv</dt>\\s*<dd>Not read. The file is empty.", rows);
        Assert.Matches("<dt>payroll.csv</dt>\\s*<dd>Left out: its columns say nothing about calls, parts or stock. It has 2 rows.", rows);
        Assert.Matches("<dt>later.csv</dt>\\s*<dd>Added after the last update.", rows);
        Assert.DoesNotContain("<dt>jobs.csv</dt>", rows, StringComparison.Ordinal);

        await PostAsync(client, "/files/remove", ("file", "empty.csv"));
        Assert.DoesNotContain("empty.csv", await PageAsync(client, "/rows"), StringComparison.Ordinal);
        Assert.True(File.Exists(Path.Combine(shop.Removed, "empty.csv")));
    }

    [Fact]
    public async Task Settings_AfterAnUpdate_ListCountedVansAndTechniciansOfTheLog()
    {
        await using RunningBench bench = await RunningBench.StartAsync();
        bench.Shops.Add("Millrace");
        using HttpClient client = await bench.ClientWithCookieAsync();
        string jobs = "Job number,Call date,Finished,Make,Model number,Customer says,Technician,Part 1\n" + string.Concat(Enumerable.Range(0, 40).Select(i => string.Create(
            System.Globalization.CultureInfo.InvariantCulture, $"J{i},2026-0{1 + (i % 7)}-{3 + (i % 20):00},2026-0{1 + (i % 7)}-{4 + (i % 20):00},Orvane,WE100,does not heat,{(i % 3 == 0 ? "E2" : "E1")},P{100 + (i % 4)}\n")));
        const string Counts = "Van,Part number,On hand,Counted on\nNorth,P100,2,2026-07-30\nSouth,P101,1,2026-07-30\n";
        await AddAsync(client, ("jobs.csv", jobs), ("van count.csv", Counts));
        await UpdateAsync(client, bench);
        string settings = await PageAsync(client, "/settings");
        Assert.Contains("Technicians in your job log: E1, E2.", settings, StringComparison.Ordinal);
        Assert.Matches("name=\"van0.name\" value=\"North\"", settings);
        Assert.Matches("name=\"van1.name\" value=\"South\"", settings);
        Assert.Contains("The last update made none. See why.", await PageAsync(client, "/results"), StringComparison.Ordinal);
        Assert.Contains("<li>Amounts are shown without a currency.", await PageAsync(client, "/run"), StringComparison.Ordinal);
    }

    private const string Since = "Changed since these figures were made: ";

    private static async Task UpdateAsync(HttpClient client, RunningBench bench)
    {
        await PostAsync(client, "/run/start");
        await bench.Work.WhenIdleAsync();
        Assert.Equal((WorkOutcome.Done, ""), (bench.Work.Now.Outcome, bench.Work.Now.Outcome == WorkOutcome.Done ? "" : string.Join(' ', bench.Work.Now.Messages)));
    }

    private static async Task<string> AddAsync(HttpClient client, params (string Name, string Text)[] files)
    {
        using var form = new MultipartFormDataContent { { new StringContent(await TokenAsync(client)), "__RequestVerificationToken" } };
        foreach ((string name, string text) in files)
        {
            form.Add(new StringContent(text), "files", name);
        }

        using HttpResponseMessage answer = await client.PostAsync("/files/add", form, Stop);
        Assert.Equal(HttpStatusCode.SeeOther, answer.StatusCode);
        return await PageAsync(client, answer.Headers.Location!.ToString());
    }

    private static async Task<string> PageAsync(HttpClient client, string address) => WebUtility.HtmlDecode(await client.GetStringAsync(address, Stop));

    private static async Task PostAsync(HttpClient client, string address, params (string Name, string Value)[] fields)
    {
        string token = await TokenAsync(client);
        using HttpResponseMessage answer = await client.PostAsync(address, new FormUrlEncodedContent([new("__RequestVerificationToken", token), .. fields.Select(f => KeyValuePair.Create(f.Name, f.Value))]), Stop);
        Assert.Equal(HttpStatusCode.SeeOther, answer.StatusCode);
    }

    private static async Task<string> TokenAsync(HttpClient client) => FormToken().Match(await client.GetStringAsync("/shops", Stop)).Groups[1].Value;

    // Noon of one day, until another is set.
    private sealed class DayClock(DateOnly day) : TimeProvider
    {
        public DateOnly Day { get; set; } = day;

        public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.Utc;

        public override DateTimeOffset GetUtcNow() => new(Day, new TimeOnly(12, 0), TimeSpan.Zero);
    }

    [GeneratedRegex("name=\"__RequestVerificationToken\" value=\"([^\"]+)\"")]
    private static partial Regex FormToken();
}
