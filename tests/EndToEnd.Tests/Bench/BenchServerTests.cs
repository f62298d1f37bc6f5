using System.Net;
using System.Text.RegularExpressions;
using PartsSignal.Analysis.Vocabulary;
using PartsSignal.Pipeline.Bench;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Review;
using PartsSignal.Reports.Components;
using PartsSignal.Reports.Workbook;

namespace PartsSignal.EndToEnd.Tests.Bench;

public sealed partial class BenchServerTests
{
    [Theory]
    [InlineData("/")]
    [InlineData("/files")]
    [InlineData("/reports/index.html")]
    [InlineData("/start?token=wrong")]
    public async Task Get_WithoutTheStartCookie_IsRefused(string address)
    {
        await using RunningBench bench = await RunningBench.StartAsync();
        using HttpClient client = bench.Client();
        HttpResponseMessage answer = await client.GetAsync(address);
        Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
        Assert.Equal("nosniff", answer.Headers.GetValues("X-Content-Type-Options").Single());
        Assert.Contains("default-src 'none'", answer.Headers.GetValues("Content-Security-Policy").Single(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Get_UnderAnotherName_IsRefused()
    {
        await using RunningBench bench = await RunningBench.StartAsync();
        using HttpClient client = await bench.ClientWithCookieAsync();
        using var request = new HttpRequestMessage(HttpMethod.Get, "/shops") { Headers = { Host = "evil.example" } };
        Assert.Equal(HttpStatusCode.MisdirectedRequest, (await client.SendAsync(request)).StatusCode);
    }

    [Theory]
    [InlineData(null, null, true, HttpStatusCode.SeeOther)]
    [InlineData(null, null, false, HttpStatusCode.BadRequest)]
    [InlineData("https://evil.example", null, true, HttpStatusCode.BadRequest)]
    [InlineData(null, "cross-site", true, HttpStatusCode.BadRequest)]
    public async Task Post_OnlyFromOurOwnPages_IsFollowed(string? origin, string? site, bool withToken, HttpStatusCode expected)
    {
        await using RunningBench bench = await RunningBench.StartAsync();
        using HttpClient client = await bench.ClientWithCookieAsync();
        string token = await FormTokenAsync(client);
        using var request = new HttpRequestMessage(HttpMethod.Post, "/shops/add")
        {
            Content = new FormUrlEncodedContent([new("name", "Millrace"), .. withToken ? [new KeyValuePair<string, string>("__RequestVerificationToken", token)] : Array.Empty<KeyValuePair<string, string>>()]),
        };
        if (origin is not null)
        {
            request.Headers.Add("Origin", origin);
        }

        if (site is not null)
        {
            request.Headers.Add("Sec-Fetch-Site", site);
        }

        Assert.Equal(expected, (await client.SendAsync(request)).StatusCode);
        Assert.Equal(expected == HttpStatusCode.SeeOther ? ["Millrace"] : [], bench.Shops.All.Select(s => s.Name));
    }

    [Theory]
    [InlineData("../../escaped.csv", "escaped.csv")]
    [InlineData("C:\\shop\\jobs.csv", "jobs.csv")]
    [InlineData("<b>jobs</b>.csv", "b.csv")]
    [InlineData("jobs.csv\u0000.exe", null)]
    [InlineData("con.csv", null)]
    [InlineData(".csv", null)]
    [InlineData("..", null)]
    [InlineData("page.html", null)]
    [InlineData("job log 2024.XLSX", "job log 2024.XLSX")]
    public void NameOf_WhatABrowserMaySend_StaysInTheFolder(string given, string? expected) => Assert.Equal(expected, UploadedFiles.NameOf(given));

    [Fact]
    public async Task Post_FileOfAnotherKind_NothingIsSaved()
    {
        await using RunningBench bench = await RunningBench.StartAsync();
        ShopFolder shop = bench.Shops.Add("Millrace");
        using HttpClient client = await bench.ClientWithCookieAsync();
        using var form = new MultipartFormDataContent
        {
            { new StringContent(await FormTokenAsync(client)), "__RequestVerificationToken" },
            { new StringContent("a,b\n1,2\n"), "files", "jobs.csv" },
            { new StringContent("<script>window.ran = 1</script>"), "files", "page.html" },
        };
        HttpResponseMessage answer = await client.PostAsync("/files/add", form);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains("page.html: this kind of file holds no table.", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        Assert.Empty(Directory.EnumerateFileSystemEntries(shop.Files));
    }

    [Fact]
    public async Task Post_MarkupInNamesAndCells_IsShownAsTextEverywhere()
    {
        await using RunningBench bench = await RunningBench.StartAsync();
        ShopFolder shop = bench.Shops.Add("<b>Millrace</b>");
        using HttpClient client = await bench.ClientWithCookieAsync();
        const string Markup = "<script>window.ran=1</script>";
        string rows = string.Concat(Enumerable.Range(1, 30).Select(i => $"J{i},2026-08-{(i % 27) + 1:00},WE100,{Markup} does not heat,\"<img src=x onerror=run()>\"\n"));
        using var form = new MultipartFormDataContent
        {
            { new StringContent(await FormTokenAsync(client)), "__RequestVerificationToken" },
            { new StringContent($"Job number,Call date,Model,Complaint,{Markup}\n{rows}"), "files", "jobs <i>2026</i>.csv" },
        };
        Assert.Equal(HttpStatusCode.SeeOther, (await client.PostAsync("/files/add", form)).StatusCode);
        Assert.Equal(["i.csv"], FilePages.FileNames(shop));
        string page = await client.GetStringAsync("/files");
        Assert.DoesNotContain(Markup, page, StringComparison.Ordinal);
        Assert.DoesNotContain("<img", page, StringComparison.Ordinal);
        Assert.DoesNotContain("<b>Millrace", page, StringComparison.Ordinal);
        Assert.Contains("&lt;script&gt;", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Post_AnswersWithUpdate_AreKeptAndTheRunStarts()
    {
        await using RunningBench bench = await RunningBench.StartAsync();
        ShopFolder shop = bench.Shops.Add("Millrace");
        await File.WriteAllTextAsync(Path.Combine(shop.Files, "jobs.csv"), "Job,Opened,Closed,Model,Serial,Complaint\nJ1,2026-08-03,2026-08-04,WE100,SN-20481122,does not heat\n");
        using HttpClient client = await bench.ClientWithCookieAsync();
        Assert.Contains("xx-00000000", await client.GetStringAsync("/files"), StringComparison.Ordinal);
        using var form = new FormUrlEncodedContent([new("__RequestVerificationToken", await FormTokenAsync(client)), new("answer:jobs.csv/column/Model", "none"), new("then", "run")]);
        HttpResponseMessage answer = await client.PostAsync("/files/answers", form);
        Assert.Equal("/run", answer.Headers.Location?.OriginalString);
        Assert.NotEqual(WorkOutcome.None, bench.Work.Now.Outcome);
        Assert.Equal("none", ShopFile.Load(shop.Files).Answers["jobs.csv/column/Model"]);
    }

    [Fact]
    public async Task Post_MoreThanAGigabyte_IsRefusedBeforeItIsRead()
    {
        await using RunningBench bench = await RunningBench.StartAsync();
        bench.Shops.Add("Millrace");
        using HttpClient client = await bench.ClientWithCookieAsync();
        using var request = new HttpRequestMessage(HttpMethod.Post, "/files/add") { Content = new StreamContent(new MemoryStream([1])) };
        request.Content.Headers.ContentType = new("multipart/form-data") { Parameters = { new("boundary", "x") } };
        request.Content.Headers.ContentLength = UploadedFiles.MostBytes + 1;
        request.Headers.ExpectContinue = true;
        HttpResponseMessage answer = await client.SendAsync(request);
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, answer.StatusCode);
        Assert.Contains("over 1 GB", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        Assert.Equal("nosniff", answer.Headers.GetValues("X-Content-Type-Options").Single());
    }

    [Fact]
    public async Task Post_WorkbookOfQuestions_IsReadWhereverItIsDropped()
    {
        await using RunningBench bench = await RunningBench.StartAsync();
        ShopFolder shop = bench.Shops.Add("Millrace");
        ReviewFile.Write(Path.Combine(Directory.CreateDirectory(shop.Output.Review).FullName, ReviewNames.Complaints), ["words", "times", "counted_as", "appliance_type", "example", "note", "answer"], [["it sulks", "3", "", "washer", "J1", "", ""]]);
        using HttpClient client = await bench.ClientWithCookieAsync();
        byte[] empty = await client.GetByteArrayAsync("/words/workbook");
        Assert.Contains("has no answers yet", await SendAsync("/words/workbook", empty), StringComparison.Ordinal);
        using var filled = new MemoryStream();
        WorkbookWriter.Write(filled, [new WorkbookSheet("Complaints", ["Typed in your files", "Your answer"], [[new("it sulks", CellKind.Text), new("makes a noise", CellKind.Text)]])]);
        Assert.Contains("1 answer read.", await SendAsync("/files/add", filled.ToArray()), StringComparison.Ordinal);
        Assert.Equal("noise", QuestionList.All(shop.Output.Review, shop.Files).Single().Questions.Single().Answer);
        Assert.Contains("is not the question workbook", WebUtility.HtmlDecode(await SendAsync("/words/workbook", [1, 2, 3], "other.csv")), StringComparison.Ordinal);

        // Among other files its answers are read all the same, and only the others become files of the shop.
        string both = await SendAsync("/files/add", filled.ToArray(), more: "jobs.csv");
        Assert.Contains("1 other file added. 1 answer read.", both, StringComparison.Ordinal);
        Assert.Equal(["jobs.csv"], FilePages.FileNames(shop));
        Assert.Empty(Directory.EnumerateFiles(shop.Files, "*.xlsx"));

        async Task<string> SendAsync(string address, byte[] bytes, string name = "review-questions (1).xlsx", string? more = null)
        {
            using var form = new MultipartFormDataContent
            {
                { new StringContent(await FormTokenAsync(client)), "__RequestVerificationToken" },
                { new ByteArrayContent(bytes), "files", name },
            };
            if (more is not null)
            {
                form.Add(new StringContent("a,b\n1,2\n"), "files", more);
            }

            return await (await client.PostAsync(address, form)).Content.ReadAsStringAsync();
        }
    }

    [Fact]
    public async Task Get_PartsForWaitingCalls_HasACautionUnderEachVan()
    {
        await using RunningBench bench = await RunningBench.StartAsync();
        ShopFolder shop = bench.Shops.Add("Millrace");
        using HttpClient client = await bench.ClientWithCookieAsync();
        Assert.DoesNotContain("☐", await PageAsync(), StringComparison.Ordinal);
        await File.WriteAllTextAsync(
            Path.Combine(Directory.CreateDirectory(shop.Output.Results).FullName, "van_booked.csv"),
            "van,job_id,opened_on,appliance_type,complaint_kind,need,part_number,quantity,chance,planned,aboard,take_along\n"
            + "1,J1,2026-10-29,washer,no_fill,inlet_valve,6895,1,0.35,0,0,1\n2,J2,2026-10-30,dryer,no_turn,drive_belt,90-3,1,0.4,1,,0\n");
        string page = await PageAsync();
        Assert.Contains("☐ Take 1: <b>6895</b> inlet valve", page, StringComparison.Ordinal);
        Assert.Contains("In the planned load: <b>90-3</b> drive belt", page, StringComparison.Ordinal);
        Assert.Equal(3, page.Split(Safety.Caution).Length);

        async Task<string> PageAsync() => WebUtility.HtmlDecode(await client.GetStringAsync("/waiting"));
    }

    [Fact]
    public async Task Post_SettingsWithFaults_AllAreSaidAndNothingIsSaved()
    {
        await using RunningBench bench = await RunningBench.StartAsync();
        ShopFolder shop = bench.Shops.Add("Millrace");
        using HttpClient client = await bench.ClientWithCookieAsync();
        string token = await FormTokenAsync(client);
        Dictionary<string, string> fields = new()
        {
            ["__RequestVerificationToken"] = token,
            ["shop"] = "Millrace",
            ["currency"] = "EUR",
            ["dateOrder"] = "dmy",
            ["callbackDays"] = "thirty",
            ["secondVisitCost"] = "$85",
            ["reviewDays"] = "7",
            ["leadTimeDays"] = "4",
            ["vanBudget"] = "1500",
            ["vanSpace"] = "200",
            ["van0.name"] = "North",
            ["van0.budget"] = "1800.50",
            ["van0.space"] = "",
        };
        HttpResponseMessage refused = await client.PostAsync("/settings", new FormUrlEncodedContent(fields));
        string page = await refused.Content.ReadAsStringAsync();
        Assert.Equal(HttpStatusCode.BadRequest, refused.StatusCode);
        Assert.Contains("Callback days: type a whole number from 1 to 3650.", page, StringComparison.Ordinal);
        Assert.Contains("Cost of a second visit: type a plain number", page, StringComparison.Ordinal);
        Assert.False(File.Exists(Path.Combine(shop.Files, "shop.json")));

        await File.WriteAllTextAsync(Path.Combine(shop.Files, "shop.json"), """{ "serviceTarget": 0.8, "vans": [ { "van": "North", "space": 50 } ] }""");
        (fields["callbackDays"], fields["secondVisitCost"]) = ("45", "85");
        Assert.Equal(HttpStatusCode.SeeOther, (await client.PostAsync("/settings", new FormUrlEncodedContent(fields))).StatusCode);
        Pipeline.Config.ShopSettings saved = Pipeline.Config.ShopFile.Load(shop.Files);
        Assert.Equal((45, 85m, 0.8), (saved.CallbackDays, saved.SecondVisitCost, saved.ServiceTarget));
        Assert.Equal([new Pipeline.Config.ShopVan("North", 1800.50m, null)], saved.Vans);
    }

    private static async Task<string> FormTokenAsync(HttpClient client) =>
        TokenField().Match(await client.GetStringAsync("/shops")).Groups[1].Value;

    [GeneratedRegex("name=\"__RequestVerificationToken\" value=\"([^\"]+)\"")]
    private static partial Regex TokenField();
}
