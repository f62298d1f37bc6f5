using System.Net;
using PartsSignal.Pipeline.Core;

namespace PartsSignal.Pipeline.Serving;

/// <summary>Where the server listens and who may use it.</summary>
/// <param name="Address">Address to listen on.</param>
/// <param name="Port">Port, 0 to 65535; 0 picks a free one.</param>
/// <param name="Token">Password for every request, or null for none, which only a loopback address allows.</param>
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
            faults.Add($"--listen {listen}: is not an address. Write it as 127.0.0.1 or 0.0.0.0.");
        }

        if (port is < 0 or > 65535)
        {
            faults.Add(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"--port {port}: must be from 0 to 65535."));
        }

        if (token is { Length: < ShortestToken })
        {
            faults.Add($"--token: is too short. Use {ShortestToken} characters or more.");
        }
        else if (token is null && address is not null && !IPAddress.IsLoopback(address))
        {
            faults.Add($"--listen {listen}: other computers can reach this address. Add --token with {ShortestToken} characters or more.");
        }

        return faults.Count == 0 ? new ServeOptions(address!, port, token) : throw new BadInputException(faults);
    }
}
