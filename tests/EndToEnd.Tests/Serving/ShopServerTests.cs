using System.Globalization;
using System.Net;
using System.Net.Http.Headers;
using System.Text.Json.Nodes;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Serving;

namespace PartsSignal.EndToEnd.Tests.Serving;

public sealed class ShopServerTests(SharedServer shared) : IClassFixture<SharedServer>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Lookup_KnownModel_GivesOddsThatSumToOne()
    {
        string text = await shared.Client.GetStringAsync("/api/lookup?model=k41 220b&complaint=wont fill", Stop);
        JsonNode answer = JsonNode.Parse(text)!;
        Assert.Equal("K41", (string?)answer["call"]!["model_family"]);
        Assert.Equal("no_fill", (string?)answer["call"]!["complaint_kind"]);
        Assert.DoesNotContain("<script", text, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task Answers_SayWhatToLookAtWhileThereAndTheDateOfTheData()
    {
        JsonNode answer = JsonNode.Parse(await shared.Client.GetStringAsync("/api/lookup?model=k41&complaint=wont fill&age=7.2", Stop))!;
        Assert.Equal("2024-05-31", (string?)answer["data_up_to"]);
        Assert.Contains(answer["while_there"]!.AsArray(), w => (string?)w!["component"] == "drain_pump");
        string page = await shared.Client.GetStringAsync("/answer?model=k41&complaint=wont fill&age=7.2", Stop);
        Assert.Contains("While you are there", page, StringComparison.Ordinal);
        Assert.Contains("Data up to May 31, 2024", page, StringComparison.Ordinal);
        Assert.Contains("value=\"7.2\"", page, StringComparison.Ordinal);
        JsonNode health = JsonNode.Parse(await shared.Client.GetStringAsync("/health", Stop))!;
        Assert.Equal(("ok", "2024-05-31"), ((string?)health["status"], (string?)health["data_up_to"]));
    }

    [Theory]
    [InlineData("/api/lookup", "?model=k41&complaint=wont fill&age=7.2", HttpStatusCode.OK)]
    [InlineData("/api/lookup", "?type=washer", HttpStatusCode.OK)]
    [InlineData("/api/lookup", "?type=spaceship", HttpStatusCode.BadRequest)]
    [InlineData("/api/months", "", HttpStatusCode.OK)]
    [InlineData("/health", "", HttpStatusCode.OK)]
    public async Task OpenApi_EveryAnswer_HasTheDescribedShape(string path, string query, HttpStatusCode expected)
    {
        JsonNode description = JsonNode.Parse(await shared.Client.GetStringAsync("/openapi.json", Stop))!;
        using HttpResponseMessage response = await shared.Client.GetAsync(path + query, Stop);
        Assert.Equal(expected, response.StatusCode);
        JsonNode described = description["paths"]![path]!["get"]!["responses"]![((int)expected).ToString(CultureInfo.InvariantCulture)]!;
        JsonNode schema = described["content"]!["application/json"]!["schema"]!;
        JsonNode answer = JsonNode.Parse(await response.Content.ReadAsStringAsync(Stop))!;
        Assert.Empty(DescribedShape.Faults(description, schema, answer));
    }

    [Fact]
    public async Task OpenApi_Description_NamesTheAddressesForProgramsAndTheirParameters()
    {
        JsonNode description = JsonNode.Parse(await shared.Client.GetStringAsync("/openapi.json", Stop))!;
        Assert.StartsWith("3.", (string?)description["openapi"], StringComparison.Ordinal);
        Assert.Equal(["/api/lookup", "/api/months", "/health"], description["paths"]!.AsObject().Select(p => p.Key).Order(StringComparer.Ordinal));
        JsonObject lookup = description["paths"]!["/api/lookup"]!.AsObject();
        Assert.Equal("get", Assert.Single(lookup).Key);
        var parameters = lookup["get"]!["parameters"]!.AsArray().ToDictionary(p => (string)p!["name"]!, p => p!["schema"]!);
        Assert.Equal(["age", "code", "complaint", "model", "type"], parameters.Keys.Order(StringComparer.Ordinal));
        Assert.Equal((0, 80), ((int)parameters["age"]["minimum"]!, (int)parameters["age"]["maximum"]!));
        Assert.Contains("dishwasher", parameters["type"]["enum"]!.AsArray().Select(t => (string?)t));
        Assert.Equal(200, (int)parameters["complaint"]["maxLength"]!);
    }

    [Fact]
    public void DescribedShape_AnswerThatDiffers_NamesTheDifference()
    {
        JsonNode schema = JsonNode.Parse("""{"type":"object","required":["a"],"properties":{"a":{"type":"string"},"b":{"type":["number","null"]}}}""")!;
        Assert.Empty(DescribedShape.Faults(schema, schema, JsonNode.Parse("""{"a":"x","b":null}""")));
        Assert.Equal(
            ["/a: is number", "/c: is not described"],
            DescribedShape.Faults(schema, schema, JsonNode.Parse("""{"a":1,"c":2}""")).Order(StringComparer.Ordinal));
        Assert.Equal(["/a: is missing"], DescribedShape.Faults(schema, schema, JsonNode.Parse("{}")));
    }

    [Theory]
    [InlineData("/api/lookup", "Give at least")]
    [InlineData("/api/lookup?model=x&age=-1", "age:")]
    [InlineData("/api/lookup?type=spaceship&age=x", "type:")]
    public async Task Lookup_BadQuestion_NamesTheFaults(string question, string fault)
    {
        using HttpResponseMessage response = await shared.Client.GetAsync(question, Stop);
        Assert.Equal(HttpStatusCode.BadRequest, response.StatusCode);
        Assert.Contains(fault, await response.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/reports/../identity.key")]
    [InlineData("/reports/..%2f..%2fidentity.key")]
    [InlineData("/reports/2024-05/..%2f..%2fidentity.key")]
    [InlineData("/reports/2024-05/../../identity.key")]
    [InlineData("/identity.key")]
    [InlineData("/reports/2024-05/other.txt")]
    public async Task Files_PathOutsideTheReports_IsNotFound(string path)
    {
        using HttpResponseMessage response = await shared.Client.GetAsync(path, Stop);
        Assert.Equal(HttpStatusCode.NotFound, response.StatusCode);
    }

    [Theory]
    [InlineData("/")]
    [InlineData("/reports/index.html")]
    [InlineData("/reports/2024-05/summary.txt")]
    [InlineData("/lookup.html")]
    [InlineData("/health")]
    [InlineData("/openapi.json")]
    [InlineData("/api/months")]
    [InlineData("/nowhere")]
    public async Task Any_Address_CarriesTheStrictHeaders(string path)
    {
        using HttpResponseMessage response = await shared.Client.GetAsync(path, Stop);
        string policy = response.Headers.GetValues("Content-Security-Policy").Single();
        Assert.StartsWith("default-src 'none'", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("unsafe", policy, StringComparison.Ordinal);
        Assert.Equal("nosniff", response.Headers.GetValues("X-Content-Type-Options").Single());
        Assert.False(response.Headers.Contains("Server"));
        Assert.Equal(path == "/nowhere" ? HttpStatusCode.NotFound : HttpStatusCode.OK, response.StatusCode);
    }

    [Theory]
    [InlineData("/")]
    [InlineData("/health")]
    [InlineData("/api/lookup?model=k41")]
    [InlineData("/api/lookup?type=spaceship")]
    [InlineData("/reports/index.html")]
    [InlineData("/reports/2024-05/summary.txt")]
    [InlineData("/nowhere")]
    public async Task Head_Anything_IsAnsweredAsGetWithoutABody(string path)
    {
        using var request = new HttpRequestMessage(HttpMethod.Head, path);
        using HttpResponseMessage head = await shared.Client.SendAsync(request, Stop);
        using HttpResponseMessage got = await shared.Client.GetAsync(path, Stop);
        Assert.Equal(got.StatusCode, head.StatusCode);
        Assert.Equal(got.Content.Headers.ContentType, head.Content.Headers.ContentType);
        Assert.Equal(got.Headers.GetValues("Content-Security-Policy"), head.Headers.GetValues("Content-Security-Policy"));
        Assert.Empty(await head.Content.ReadAsByteArrayAsync(Stop));
    }

    [Fact]
    public async Task Post_Anything_IsRefused()
    {
        using HttpResponseMessage response = await shared.Client.PostAsync("/api/lookup", null, Stop);
        Assert.Equal(HttpStatusCode.MethodNotAllowed, response.StatusCode);
    }

    [Fact]
    public async Task Host_OfAnotherSite_IsRefused()
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, "/health");
        request.Headers.Host = "shop.example";
        using HttpResponseMessage response = await shared.Client.SendAsync(request, Stop);
        Assert.Equal(HttpStatusCode.MisdirectedRequest, response.StatusCode);
    }

    [Fact]
    public async Task Host_OfAnotherSiteAskingOften_LeavesTheOwnersQuestionsAlone()
    {
        await using RunningServer server = await RunningServer.StartAsync();
        for (int i = 0; i < 300; i++)
        {
            using var foreign = new HttpRequestMessage(HttpMethod.Get, "/health");
            foreign.Headers.Host = "shop.example";
            using HttpResponseMessage refused = await server.Client.SendAsync(foreign, Stop);
            Assert.Equal(HttpStatusCode.MisdirectedRequest, refused.StatusCode);
        }

        Assert.Equal(HttpStatusCode.OK, (await server.Client.GetAsync("/health", Stop)).StatusCode);
    }

    [Fact]
    public async Task Answer_FormLeftEmpty_SaysWhatToTypeOnThePage()
    {
        using HttpResponseMessage response = await shared.Client.GetAsync("/answer?model=&complaint=&type=&age=", Stop);
        string page = await response.Content.ReadAsStringAsync(Stop);
        Assert.Equal(HttpStatusCode.BadRequest, response.StatusCode);
        Assert.Equal("text/html", response.Content.Headers.ContentType!.MediaType);
        Assert.Contains("Give at least", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Token_WhereSet_IsNeededByEveryAddress()
    {
        await using RunningServer server = await RunningServer.StartAsync("0123456789abcdef");
        Assert.Equal(HttpStatusCode.Unauthorized, (await server.Client.GetAsync("/health", Stop)).StatusCode);
        server.Client.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", "0123456789abcdeg");
        Assert.Equal(HttpStatusCode.Unauthorized, (await server.Client.GetAsync("/health", Stop)).StatusCode);
        server.Client.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", "0123456789abcdef");
        Assert.Equal(HttpStatusCode.OK, (await server.Client.GetAsync("/health", Stop)).StatusCode);
    }

    [Fact]
    public void Options_OpenAddressWithoutToken_AreRefusedWithEveryFault()
    {
        var bad = Assert.Throws<BadInputException>(() => ServeOptions.Read("0.0.0.0", 70000, null));
        Assert.Equal(2, bad.Faults.Count);
        Assert.Throws<BadInputException>(() => ServeOptions.Read("0.0.0.0", 8710, "short"));
        Assert.NotNull(ServeOptions.Read("0.0.0.0", 8710, "0123456789abcdef"));
    }

    [Fact]
    public async Task Ask_MoreOftenThanTheLimit_IsRefusedBeforeTheTokenIsLookedAt()
    {
        await using RunningServer server = await RunningServer.StartAsync("0123456789abcdef");
        var answers = new List<HttpStatusCode>();
        for (int i = 0; i < 260; i++)
        {
            using HttpResponseMessage response = await server.Client.GetAsync("/health", Stop);
            answers.Add(response.StatusCode);
            Assert.Contains("default-src", response.Headers.GetValues("Content-Security-Policy").Single(), StringComparison.Ordinal);
        }

        Assert.Equal(HttpStatusCode.TooManyRequests, answers[^1]);
        using HttpResponseMessage last = await server.Client.GetAsync("/health", Stop);
        Assert.Equal("60", last.Headers.GetValues("Retry-After").Single());
        Assert.DoesNotContain(HttpStatusCode.OK, answers);
    }

    [Theory]
    [InlineData(9_000, HttpStatusCode.RequestUriTooLong)]
    [InlineData(3_000, HttpStatusCode.BadRequest)]
    public async Task Ask_EndlessLine_IsRefusedWithoutATrace(int length, HttpStatusCode expected)
    {
        using HttpResponseMessage response = await shared.Client.GetAsync("/api/lookup?complaint=" + new string('x', length), Stop);
        Assert.Equal(expected, response.StatusCode);
        Assert.DoesNotContain("   at ", await response.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
    }
}
