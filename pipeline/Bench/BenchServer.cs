using System.Net;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using PartsSignal.Pipeline.Serving;

namespace PartsSignal.Pipeline.Bench;

/// <summary>The bench: everything the program can do, as pages for this computer's own browser.</summary>
internal static class BenchServer
{
    private const int LongestHeaders = 32 * 1024;

    /// <summary>Builds the server; it listens once started.</summary>
    /// <param name="port">Port on 127.0.0.1; 0 picks a free one.</param>
    /// <param name="token">Secret of the start address.</param>
    /// <param name="shops">The shops of this computer.</param>
    /// <param name="work">Runs shops in the background.</param>
    /// <param name="clock">The clock.</param>
    public static WebApplication Build(int port, StartToken token, KnownShops shops, BenchWork work, TimeProvider clock)
    {
        WebApplicationBuilder builder = WebApplication.CreateSlimBuilder(new WebApplicationOptions { Args = [], ContentRootPath = AppContext.BaseDirectory });
        builder.Logging.ClearProviders();
        builder.WebHost.ConfigureKestrel(kestrel =>
        {
            kestrel.AddServerHeader = false;
            kestrel.Limits.MaxRequestBodySize = UploadedFiles.MostBytes;
            kestrel.Limits.MaxRequestHeadersTotalSize = LongestHeaders;
            kestrel.Limits.RequestHeadersTimeout = TimeSpan.FromSeconds(10);
            kestrel.Listen(IPAddress.Loopback, port, RefusalHeaders.Use);
        });
        builder.Services.Configure<FormOptions>(form =>
        {
            form.MultipartBodyLengthLimit = UploadedFiles.MostBytes;
            form.ValueCountLimit = 20_000;
        });
        builder.Services.AddRazorComponents();
        builder.Services.AddAntiforgery(form =>
        {
            form.Cookie.Name = "partssignal-form";
            form.Cookie.SameSite = SameSiteMode.Strict;
        });

        // The keys of forms end with the program: nothing to keep, nothing to steal.
        builder.Services.AddDataProtection().UseEphemeralDataProtectionProvider();
        builder.Services.AddScoped<PageView>();
        builder.Services.AddSingleton(shops);
        builder.Services.AddSingleton(work);
        builder.Services.AddSingleton(clock);
        WebApplication app = builder.Build();
        app.Use(new BenchGuard(token, app.Services.GetRequiredService<IAntiforgery>()).PassAsync);
        app.UseRouting();
        BenchEndpoints.Map(app, token);
        return app;
    }
}
