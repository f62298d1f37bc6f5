using System.Security.Cryptography;
using System.Text;
using Microsoft.AspNetCore.Http;

namespace PartsSignal.Pipeline.Bench;

/// <summary>
/// The secret in the address that the program opens. It turns into a cookie of this browser; without it no page is shown, so
/// that other people and other sites on this computer stay out.
/// </summary>
internal sealed class StartToken
{
    private const string CookieName = "partssignal-bench";
    private readonly byte[] _hash;

    /// <summary>A new secret.</summary>
    public StartToken()
    {
        Text = Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(32));
        _hash = Hash(Text);
    }

    /// <summary>The secret.</summary>
    public string Text { get; }

    /// <summary>True when the request carries the cookie.</summary>
    public bool IsIn(HttpRequest request) => IsRight(request.Cookies[CookieName]);

    /// <summary>True when the text is the secret.</summary>
    public bool IsRight(string? text) => text is not null && CryptographicOperations.FixedTimeEquals(Hash(text), _hash);

    /// <summary>Gives the browser its cookie.</summary>
    public void Give(HttpResponse response) => response.Cookies.Append(CookieName, Text, new CookieOptions { HttpOnly = true, SameSite = SameSiteMode.Strict, Path = "/", IsEssential = true });

    private static byte[] Hash(string text) => SHA256.HashData(Encoding.UTF8.GetBytes(text));
}
