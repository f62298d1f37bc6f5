using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.Extensions.DependencyInjection;
using PartsSignal.Pipeline.Core;
using PartsSignal.Reports.Phone;
using PartsSignal.SampleShop;

namespace PartsSignal.Pipeline.Bench;

/// <summary>The addresses of the bench.</summary>
internal static class BenchEndpoints
{
    private static readonly string[] Read = [HttpMethods.Get, HttpMethods.Head];

    /// <summary>Adds all of them.</summary>
    public static void Map(WebApplication app, StartToken token)
    {
        app.MapGet(BenchGuard.StartPath, (HttpContext context) => Start(context, token, context.Request.Query["token"]));
        foreach (string address in BenchAssets.Addresses)
        {
            app.MapMethods(address, Read, () => BenchAssets.Send(address));
        }

        app.MapGet("/", (KnownShops shops) => Results.Redirect(shops.Open is null ? "/shops" : "/files"));
        app.MapGet("/favicon.ico", () => Results.NoContent());
        ShopPages.Map(app);
        FilePages.Map(app);
        RunPages.Map(app);
        RowPages.Map(app);
        WordPages.Map(app);
        ResultPages.Map(app);
        SettingsPages.Map(app);
        HistoryPages.Map(app);
        app.MapFallback((HttpContext context) => Page<NotFoundPage>(context, new object(), status: StatusCodes.Status404NotFound));
    }

    /// <summary>A page with its data.</summary>
    public static IResult Page<TPage>(HttpContext context, object model, IReadOnlyList<string>? faults = null, string? notice = null, int? status = null)
        where TPage : IComponent
    {
        PageView view = context.RequestServices.GetRequiredService<PageView>();
        view.Shop = context.RequestServices.GetRequiredService<KnownShops>().Open;
        view.IsRunning = context.RequestServices.GetRequiredService<BenchWork>().Now.Outcome == WorkOutcome.Running;
        view.InterruptedUpdate = view.Shop is { } shop && !view.IsRunning ? new UpdateMark(shop).InterruptedMessage : null;
        view.OldData = model is IFigures figures ? OldFigures(figures.LastDay, context.RequestServices.GetRequiredService<TimeProvider>()) : null;
        view.Faults = faults ?? [];
        view.Notice = notice;
        view.Set(model);
        return new RazorComponentResult<TPage> { StatusCode = status ?? (faults?.Count > 0 ? StatusCodes.Status400BadRequest : StatusCodes.Status200OK) };
    }

    /// <summary>What an owner can do about figures that end long ago.</summary>
    public const string WhenOld = "Add newer files, then update the figures.";

    /// <summary>What to tell when figures end long ago, or null.</summary>
    /// <param name="lastDay">Last day that they reach, or null if unknown.</param>
    /// <param name="clock">Tells today.</param>
    public static string? OldFigures(DateOnly? lastDay, TimeProvider clock) =>
        OldData.Sentence(lastDay, DateOnly.FromDateTime(clock.GetLocalNow().DateTime), WhenOld);

    /// <summary>The address for pages that need an open shop, when there is none.</summary>
    public static IResult NoShop() => Results.Redirect("/shops");

    /// <summary>Sends the browser on after a form, so that reloading does not send it again.</summary>
    public static IResult SeeOther(string address) => new SeeOtherResult(address);

    private static IResult Start(HttpContext context, StartToken token, string? given)
    {
        if (!token.IsRight(given))
        {
            return Results.Text("Open PartsSignal with the address it printed when it started.", statusCode: StatusCodes.Status403Forbidden);
        }

        token.Give(context.Response);
        return Results.Redirect("/");
    }

    private sealed class SeeOtherResult(string address) : IResult
    {
        public Task ExecuteAsync(HttpContext httpContext)
        {
            httpContext.Response.StatusCode = StatusCodes.Status303SeeOther;
            httpContext.Response.Headers.Location = address;
            return Task.CompletedTask;
        }
    }
}

/// <summary>Choosing and adding shops.</summary>
internal static class ShopPages
{
    private const string SampleName = "Fictional shop";

    public static void Map(WebApplication app)
    {
        app.MapGet("/shops", Show);
        app.MapPost("/shops/add", async (HttpContext context, KnownShops shops) =>
        {
            IFormCollection form = await context.Request.ReadFormAsync(context.RequestAborted).ConfigureAwait(false);
            try
            {
                SettingsForm.Name(shops.Add(form["name"]));
                return BenchEndpoints.SeeOther("/files");
            }
            catch (BadInputException bad)
            {
                return BenchEndpoints.Page<ShopsPage>(context, new ShopsView(shops.All), bad.Faults);
            }
        });
        app.MapPost("/shops/open", async (HttpContext context, KnownShops shops) =>
        {
            IFormCollection form = await context.Request.ReadFormAsync(context.RequestAborted).ConfigureAwait(false);
            return BenchEndpoints.SeeOther(shops.Choose(form["folder"]) ? "/files" : "/shops");
        });
        app.MapPost("/shops/sample", (KnownShops shops) =>
        {
            if (shops.All.FirstOrDefault(s => s.Name == SampleName) is { } made)
            {
                shops.Choose(made.Folder);
                return BenchEndpoints.SeeOther("/files");
            }

            ShopFolder shop = shops.Add(SampleName);
            Directory.Delete(shop.Files);
            SampleShopMaker.Write(new SampleShopOptions(SampleShopOptions.CommittedJobs, SampleShopOptions.CommittedSeed, shop.Files));
            return BenchEndpoints.SeeOther("/files");
        });
    }

    private static IResult Show(HttpContext context, KnownShops shops) => BenchEndpoints.Page<ShopsPage>(context, new ShopsView(shops.All));
}
