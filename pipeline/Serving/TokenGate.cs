using System.Security.Cryptography;
using System.Text;
using Microsoft.AspNetCore.Http;

namespace PartsSignal.Pipeline.Serving;

/// <summary>Lets a question pass that carries the token, as a bearer token or as the password of basic authentication.</summary>
internal sealed class TokenGate(string token)
{
    private readonly byte[] _wanted = Hash(token);

    public bool Lets(HttpRequest request)
    {
        string header = request.Headers.Authorization.ToString();
        string given = header.StartsWith("Bearer ", StringComparison.OrdinalIgnoreCase) ? header[7..]
            : header.StartsWith("Basic ", StringComparison.OrdinalIgnoreCase) ? Password(header[6..])
            : "";

        // Hashes are of one length, so the comparison takes the same time whatever was given.
        return CryptographicOperations.FixedTimeEquals(Hash(given), _wanted);
    }

    private static string Password(string encoded)
    {
        var bytes = new byte[encoded.Length];
        if (!Convert.TryFromBase64String(encoded.Trim(), bytes, out int length))
        {
            return "";
        }

        string pair = Encoding.UTF8.GetString(bytes, 0, length);
        return pair[(pair.IndexOf(':', StringComparison.Ordinal) + 1)..];
    }

    private static byte[] Hash(string text) => SHA256.HashData(Encoding.UTF8.GetBytes(text));
}
