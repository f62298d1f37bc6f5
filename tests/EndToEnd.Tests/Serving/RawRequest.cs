using System.Net.Sockets;
using System.Text;

namespace PartsSignal.EndToEnd.Tests.Serving;

/// <summary>Bytes sent to a server as they are, and the answer as it came.</summary>
internal static class RawRequest
{
    public static async Task<string> AskAsync(string address, string request, CancellationToken stop)
    {
        var uri = new Uri(address);
        using var client = new TcpClient();
        await client.ConnectAsync(uri.Host, uri.Port, stop);
        NetworkStream stream = client.GetStream();
        await stream.WriteAsync(Encoding.ASCII.GetBytes(request), stop);
        using var answer = new StreamReader(stream, Encoding.ASCII);
        return await answer.ReadToEndAsync(stop);
    }
}
