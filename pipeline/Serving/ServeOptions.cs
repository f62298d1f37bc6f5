using System.Net;
using PartsSignal.Pipeline.Core;

namespace PartsSignal.Pipeline.Serving;

/// <summary>Where the server listens and who may ask.</summary>
/// <param name="Address">Address to listen on.</param>
/// <param name="Port">Port, 0 to 65535; 0: any free one.</param>
/// <param name="Token">Secret every question must carry; null: none, on this machine's own address only.</param>
internal sealed record ServeOptions(IPAddress Address, int Port, string? Token)
{
    /// <summary>Shortest token accepted.</summary>
    public const int ShortestToken = 16;

    /// <summary>Reads the options.</summary>
    /// <exception cref="BadInputException">The address is none, or it is open to others without a long enough token.</exception>
    public static ServeOptions Read(string? listen, int port, string? token)
    {
        var faults = new List<string>();
        if (!IPAddress.TryParse(listen ?? "127.0.0.1", out IPAddress? address))
        {
            faults.Add($"--listen {listen}: is no address; write one as 127.0.0.1 or 0.0.0.0.");
        }

        if (port is < 0 or > 65535)
        {
            faults.Add(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"--port {port}: must lie from 0 to 65535."));
        }

        if (token is { Length: < ShortestToken })
        {
            faults.Add($"--token: too short; give {ShortestToken} characters or more.");
        }
        else if (token is null && address is not null && !IPAddress.IsLoopback(address))
        {
            faults.Add($"--listen {listen}: others can reach this address, so it needs --token with {ShortestToken} characters or more.");
        }

        return faults.Count == 0 ? new ServeOptions(address!, port, token) : throw new BadInputException(faults);
    }
}
