using System.Net;
using System.Security.Cryptography;
using System.Text;
using Microsoft.AspNetCore.Http;
using PartsSignal.Reports.Phone;

namespace PartsSignal.Pipeline.Serving;

/// <summary>What every question passes first: headers that keep browsers strict, the methods and names allowed, and the token.</summary>
internal sealed class RequestGuard(ServeOptions options)
{
    private readonly string[] _ownNames = ["127.0.0.1", "localhost", "[::1]", "::1", options.Address.ToString()];
    private readonly TokenGate? _gate = options.Token is { } token ? new TokenGate(token) : null;

    /// <summary>Turns away requests under a name that is not this computer's, where only this computer may ask.</summary>
    public Task PassNameAsync(HttpContext context, RequestDelegate next) =>
        IPAddress.IsLoopback(options.Address) && !_ownNames.Contains(context.Request.Host.Host, StringComparer.OrdinalIgnoreCase)
            ? RefuseAsync(context, StatusCodes.Status421MisdirectedRequest, "This server answers to this machine's own name only.")
            : next(context);

    /// <summary>Turns away other methods than reading, and requests without the token.</summary>
    public async Task PassAsync(HttpContext context, RequestDelegate next)
    {
        if (!HttpMethods.IsGet(context.Request.Method) && !HttpMethods.IsHead(context.Request.Method))
        {
            await RefuseAsync(context, StatusCodes.Status405MethodNotAllowed, "Only questions are answered here: use GET.").ConfigureAwait(false);
        }
        else if (_gate is not null && !_gate.Lets(context.Request))
        {
            context.Response.Headers.WWWAuthenticate = "Basic realm=\"partssignal\", charset=\"UTF-8\"";
            await RefuseAsync(context, StatusCodes.Status401Unauthorized, "A token is needed.").ConfigureAwait(false);
        }
        else
        {
            await next(context).ConfigureAwait(false);
            if (context.Response is { StatusCode: StatusCodes.Status404NotFound, HasStarted: false, ContentLength: null })
            {
                await RefuseAsync(context, StatusCodes.Status404NotFound, "There is no such page. Go back to /.").ConfigureAwait(false);
            }
        }
    }

    /// <summary>Sets the headers that keep browsers strict; every answer carries them, also a refusal.</summary>
    public static void Strict(IHeaderDictionary headers)
    {
        headers.ContentSecurityPolicy = ServedPolicy.Text;
        headers.XContentTypeOptions = "nosniff";
        headers.XFrameOptions = "DENY";
        headers["Referrer-Policy"] = "no-referrer";
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";
        headers["Permissions-Policy"] = "camera=(), geolocation=(), microphone=()";
        headers.CacheControl = "no-store";
    }

    private static Task RefuseAsync(HttpContext context, int status, string why)
    {
        context.Response.StatusCode = status;
        return context.Response.WriteAsync(why);
    }
}

/// <summary>Authenticates a request by bearer token or basic-auth password.</summary>
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
