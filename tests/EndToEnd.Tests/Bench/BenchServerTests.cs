using System.Net;
using System.Text.RegularExpressions;
using PartsSignal.Pipeline.Bench;

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
