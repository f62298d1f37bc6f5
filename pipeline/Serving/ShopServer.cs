using System.Net;
using System.Threading.RateLimiting;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Logging;

namespace PartsSignal.Pipeline.Serving;

/// <summary>The shop's own server: reports, phone page, a question to the live predictor, and the same for programs.</summary>
internal static class ShopServer
{
    private const int QuestionsPerMinute = 240;
    private const int LongestLine = 4096;
    private const int MostConnections = 500;

    /// <summary>Builds the server; it listens once started.</summary>
    public static WebApplication Build(ServeOptions options, ReloadingShop shop, TimeProvider clock)
    {
        WebApplicationBuilder builder = WebApplication.CreateSlimBuilder(new WebApplicationOptions { Args = [], ContentRootPath = AppContext.BaseDirectory });
        builder.Logging.ClearProviders();
        builder.WebHost.ConfigureKestrel(kestrel =>
        {
            kestrel.AddServerHeader = false;
            kestrel.Limits.MaxRequestBodySize = 0;
            kestrel.Limits.MaxRequestLineSize = LongestLine;
            kestrel.Limits.MaxRequestHeadersTotalSize = 2 * LongestLine;
            kestrel.Limits.MaxConcurrentConnections = MostConnections;

            // A connection that only began to ask must not keep others waiting.
            kestrel.Limits.RequestHeadersTimeout = TimeSpan.FromSeconds(5);
            kestrel.Listen(options.Address, options.Port, RefusalHeaders.Use);
        });
        builder.Services.AddRateLimiter(limits =>
        {
            limits.RejectionStatusCode = StatusCodes.Status429TooManyRequests;
            limits.OnRejected = (refused, cancellation) =>
            {
                refused.HttpContext.Response.Headers.RetryAfter = "60";
                return new ValueTask(refused.HttpContext.Response.WriteAsync("Too many questions. Wait a minute.", cancellation));
            };
            limits.GlobalLimiter = PartitionedRateLimiter.Create<HttpContext, IPAddress>(context => RateLimitPartition.GetFixedWindowLimiter(
                context.Connection.RemoteIpAddress ?? IPAddress.None,
                _ => new FixedWindowRateLimiterOptions { PermitLimit = QuestionsPerMinute, Window = TimeSpan.FromMinutes(1) }));
        });
        ShopEndpoints.Describe(builder.Services);
        WebApplication app = builder.Build();
        var guard = new RequestGuard(options);
        app.Use((context, next) =>
        {
            RequestGuard.Strict(context.Response.Headers);
            return next(context);
        });

        // Another site's pages must not use up the owner's questions, so they are turned away first. Guessing a token counts as asking.
        app.Use(guard.PassNameAsync);
        app.UseRateLimiter();
        app.Use(guard.PassAsync);
        new ShopEndpoints(shop, clock).Map(app);
        return app;
    }
}
