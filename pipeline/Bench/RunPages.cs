using System.Text.Json;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;

namespace PartsSignal.Pipeline.Bench;

/// <summary>Starting a run, and watching it.</summary>
internal static class RunPages
{
    private static readonly TimeSpan Beat = TimeSpan.FromMilliseconds(500);

    public static void Map(WebApplication app)
    {
        app.MapGet("/run", (HttpContext context, KnownShops shops, BenchWork work) => shops.Open is { } shop ? BenchEndpoints.Page<RunPage>(context, StateFor(shop, work.Now)) : BenchEndpoints.NoShop());
        app.MapPost("/run/start", (KnownShops shops, BenchWork work) =>
        {
            if (shops.Open is not { } shop)
            {
                return BenchEndpoints.NoShop();
            }

            work.Start(shop);
            return BenchEndpoints.SeeOther("/run");
        });
        app.MapPost("/run/stop", (BenchWork work) =>
        {
            work.Stop();
            return BenchEndpoints.SeeOther("/run");
        });
        app.MapGet("/run/progress", WatchAsync);
    }

    // What another shop's update came to is no news of this one.
    private static WorkState StateFor(ShopFolder shop, WorkState now) => now.Outcome == WorkOutcome.Running || now.Folder == shop.Folder ? now : WorkState.Idle;

    // Server-sent events: one line of JSON whenever something changed, the last when the run ends.
    private static async Task WatchAsync(HttpContext context, BenchWork work)
    {
        context.Response.ContentType = "text/event-stream";
        WorkState? sent = null;
        while (!context.RequestAborted.IsCancellationRequested)
        {
            WorkState now = work.Now;
            if (now != sent)
            {
                sent = now;
                string line = JsonSerializer.Serialize(new { percent = now.Percent, step = now.Step, running = now.Outcome == WorkOutcome.Running });
                await context.Response.WriteAsync($"data: {line}\n\n", context.RequestAborted).ConfigureAwait(false);
                await context.Response.Body.FlushAsync(context.RequestAborted).ConfigureAwait(false);
            }

            if (now.Outcome != WorkOutcome.Running)
            {
                return;
            }

            try
            {
                await Task.Delay(Beat, context.RequestAborted).ConfigureAwait(false);
            }
            catch (OperationCanceledException)
            {
                return;
            }
        }
    }
}
