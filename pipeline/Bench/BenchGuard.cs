using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Http;
using PartsSignal.Pipeline.Serving;

namespace PartsSignal.Pipeline.Bench;

/// <summary>
/// What every request passes first: only this computer's own names, only the browser that was started, and forms only from
/// our own pages.
/// </summary>
internal sealed class BenchGuard(StartToken token, IAntiforgery forms)
{
    /// <summary>Where the start address leads.</summary>
    public const string StartPath = "/start";

    private const string OwnPages = "default-src 'none'; style-src 'self'; script-src 'self'; img-src 'self' data:; connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

    private const string TooLarge = "Together these files are over 1 GB. Go back and add a few at a time.";

    // Reports and the phone page carry their style inside and allow it by its hash.
    private static readonly string[] StyledInside = ["/reports", "/lookup.html"];
    private static readonly string[] OwnNames = ["127.0.0.1", "localhost"];

    public async Task PassAsync(HttpContext context, RequestDelegate next)
    {
        HttpRequest request = context.Request;
        Strict(context.Response.Headers, request.Path);
        if (!OwnNames.Contains(request.Host.Host, StringComparer.OrdinalIgnoreCase))
        {
            await RefuseAsync(context, StatusCodes.Status421MisdirectedRequest, "These pages answer to this computer's own name only.").ConfigureAwait(false);
        }
        else if (request.Path != StartPath && !BenchAssets.Has(request.Path) && !token.IsIn(request))
        {
            await RefuseAsync(context, StatusCodes.Status403Forbidden, "Open PartsSignal with the address it printed when it started.").ConfigureAwait(false);
        }
        else if (request.ContentLength > UploadedFiles.MostBytes)
        {
            await RefuseAsync(context, StatusCodes.Status413PayloadTooLarge, TooLarge).ConfigureAwait(false);
        }
        else if (HttpMethods.IsPost(request.Method) && !await IsOwnFormAsync(context).ConfigureAwait(false))
        {
            await RefuseAsync(context, StatusCodes.Status400BadRequest, "This form is from an earlier start of the program. Go back, reload the page, and send it again.").ConfigureAwait(false);
        }
        else
        {
            await next(context).ConfigureAwait(false);
        }
    }

    private async Task<bool> IsOwnFormAsync(HttpContext context)
    {
        string origin = context.Request.Headers.Origin.ToString();
        string site = context.Request.Headers["Sec-Fetch-Site"].ToString();
        if ((origin.Length > 0 && origin != $"{context.Request.Scheme}://{context.Request.Host}") || site is not ("" or "same-origin"))
        {
            return false;
        }

        try
        {
            return await forms.IsRequestValidAsync(context).ConfigureAwait(false);
        }
        catch (Exception tooMuch) when (tooMuch is InvalidDataException or BadHttpRequestException)
        {
            return false;
        }
    }

    private static void Strict(IHeaderDictionary headers, PathString path)
    {
        RequestGuard.Strict(headers);
        if (!StyledInside.Any(p => path.StartsWithSegments(p)))
        {
            headers.ContentSecurityPolicy = OwnPages;
        }

        // Without a referrer, browsers send no usable Origin with our own forms.
        headers["Referrer-Policy"] = "same-origin";
    }

    private static Task RefuseAsync(HttpContext context, int status, string why)
    {
        context.Response.StatusCode = status;
        context.Response.ContentType = "text/plain; charset=utf-8";
        return context.Response.WriteAsync(why);
    }
}
