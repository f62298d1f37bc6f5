using System.Text;
using PartsSignal.EndToEnd.Tests.Bench;
using PartsSignal.Pipeline.Serving;

namespace PartsSignal.EndToEnd.Tests.Serving;

public sealed class RefusalHeadersTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public static TheoryData<string> Malformed => new(
        "NOT HTTP AT ALL\r\n\r\n",
        "GET / HTTP/1.1\r\nHost: two names\r\n\r\n",
        "GET / HTTP/1.1\r\n\r\n",
        "GET /" + new string('x', 9_000) + " HTTP/1.1\r\nHost: localhost\r\n\r\n",
        "GET / HTTP/1.1\r\nHost: localhost\r\nA: " + new string('x', 40_000) + "\r\n\r\n");

    [Theory]
    [MemberData(nameof(Malformed))]
    public async Task Ask_Malformed_IsRefusedWithTheStrictHeaders(string request)
    {
        await using RunningServer server = await RunningServer.StartAsync();
        AssertStrict(await RawRequest.AskAsync(server.Address, request, Stop));
        await using RunningBench bench = await RunningBench.StartAsync();
        AssertStrict(await RawRequest.AskAsync(bench.Address, request, Stop));
    }

    [Fact]
    public void WithHeaders_OtherAnswers_StayAsTheyAre()
    {
        foreach (string sent in (string[])["HTTP/1.1 200 OK\r\nContent-Length: 0\r\n\r\n", "HTTP/1.1 400 Bad Request\r\nContent-Length: 5\r\n\r\n", "text", ""])
        {
            byte[] bytes = Encoding.ASCII.GetBytes(sent);
            Assert.Equal(bytes, RefusalHeaders.WithHeaders(bytes).ToArray());
        }
    }

    private static void AssertStrict(string answer)
    {
        Assert.StartsWith("HTTP/1.1 4", answer, StringComparison.Ordinal);
        Assert.Single(answer.Split("\r\n"), line => line.StartsWith("Content-Security-Policy: default-src 'none'", StringComparison.Ordinal));
        Assert.Contains("\r\nX-Content-Type-Options: nosniff\r\n", answer, StringComparison.Ordinal);
    }
}
