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
            kestrel.Limits.MaxConcurrentConnections = 100;
            kestrel.Listen(options.Address, options.Port);
        });
        builder.Services.AddRateLimiter(limits =>
        {
            limits.RejectionStatusCode = StatusCodes.Status429TooManyRequests;
            limits.GlobalLimiter = PartitionedRateLimiter.Create<HttpContext, IPAddress>(context => RateLimitPartition.GetFixedWindowLimiter(
                context.Connection.RemoteIpAddress ?? IPAddress.None,
                _ => new FixedWindowRateLimiterOptions { PermitLimit = QuestionsPerMinute, Window = TimeSpan.FromMinutes(1) }));
        });
        ShopEndpoints.Describe(builder.Services);
        WebApplication app = builder.Build();
        app.Use((context, next) =>
        {
            RequestGuard.Strict(context.Response.Headers);
            return next(context);
        });

        // Before the token is looked at: guessing counts as asking.
        app.UseRateLimiter();
        app.Use(new RequestGuard(options).PassAsync);
        new ShopEndpoints(shop, clock).Map(app);
        return app;
    }
}
