using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using PartsSignal.Analysis.Prediction;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Serving;
using PartsSignal.Reports.Phone;

namespace PartsSignal.Pipeline.Bench;

/// <summary>What the last run gave: reports, lookup, van lists, the phone page.</summary>
internal static class ResultPages
{
    public static void Map(WebApplication app)
    {
        var answers = new OpenAnswers();
        app.MapGet("/results", (HttpContext context, KnownShops shops) => shops.Open is { } shop ? BenchEndpoints.Page<ResultsPage>(context, View(shop)) : BenchEndpoints.NoShop());
        app.MapGet("/vans", (HttpContext context, KnownShops shops) => shops.Open is { } shop ? BenchEndpoints.Page<VansPage>(context, Vans(shop)) : BenchEndpoints.NoShop());
        app.MapGet("/waiting", (HttpContext context, KnownShops shops) => shops.Open is { } shop ? BenchEndpoints.Page<WaitingPage>(context, Waiting(shop)) : BenchEndpoints.NoShop());
        app.MapGet("/compare", (HttpContext context, KnownShops shops, string? first, string? second) => shops.Open is { } shop ? BenchEndpoints.Page<ComparePage>(context, Compared(shop, first, second)) : BenchEndpoints.NoShop());
        // The reports link to a list beside them; here it has buttons, and so the policy of the bench's own pages.
        app.MapGet("/reports", () => Results.Redirect("/months"));
        app.MapGet("/reports/index.html", () => Results.Redirect("/months"));
        app.MapGet("/months", (HttpContext context, KnownShops shops) => shops.Open is { } shop ? BenchEndpoints.Page<MonthsPage>(context, Months(shop)) : BenchEndpoints.NoShop());
        app.MapPost("/months/make", async (HttpContext context, KnownShops shops, BenchWork work) =>
        {
            IFormCollection form = await context.Request.ReadFormAsync(context.RequestAborted).ConfigureAwait(false);
            if (shops.Open is not { } shop)
            {
                return BenchEndpoints.NoShop();
            }

            // Only a month of the last update; while something runs, its progress is the answer.
            if (Array.Find([.. Months(shop).Months], m => m.Name == form["month"]) is not { } month)
            {
                return BenchEndpoints.SeeOther("/months");
            }

            work.StartReport(shop, month.First);
            return BenchEndpoints.SeeOther("/run");
        });
        app.MapGet("/reports/{month}/{file}", (KnownShops shops, TimeProvider clock, string month, string file) => shops.Open is { } shop ? new ServedFiles(shop.Output).ReportOnBench(month, file, BenchEndpoints.OldFigures(LastDay(shop), clock)) : BenchEndpoints.NoShop());
        app.MapGet("/lookup.html", (KnownShops shops) => shops.Open is { } shop ? new ServedFiles(shop.Output).PhonePage() : BenchEndpoints.NoShop());
        app.MapGet("/ask", (HttpContext context, KnownShops shops, TimeProvider clock) => Asked(context, answers.Of(shops.Open, clock)?.Empty()));
        app.MapGet("/answer", (HttpContext context, KnownShops shops, TimeProvider clock, string? model, string? complaint, string? type, string? age, string? code) =>
            Asked(context, answers.Of(shops.Open, clock)?.Ask(model, complaint, type, age, code)));
    }

    // Before the first update nothing can be asked: the page of results says what to do.
    private static IResult Asked(HttpContext context, CallView? view) => view is null ? Results.Redirect("/results")
        : BenchEndpoints.Page<AskPage>(context, new AskView(view), status: view.Faults.Count == 0 ? StatusCodes.Status200OK : StatusCodes.Status400BadRequest);

    private static DateOnly? LastDay(ShopFolder shop)
    {
        using var update = LastUpdate.Open(shop);
        return update.LastDay;
    }

    private static MonthsView Months(ShopFolder shop) => MonthsView.Of(shop, LastDay(shop));

    private static ResultsView View(ShopFolder shop) => new(
        new ServedFiles(shop.Output).Months(),
        File.Exists(shop.Output.LookupPage),
        VanList.Vans(shop.Output.Results).Count > 0,
        File.Exists(shop.Output.RunRecord) ? File.GetLastWriteTime(shop.Output.RunRecord) : null,
        Months(shop))
    {
        Since = FiguresBasis.ChangesSince(shop),
    };

    private static VansView Vans(ShopFolder shop)
    {
        using var update = LastUpdate.Open(shop);
        IReadOnlyList<VanList> vans = VanList.All(shop.Output.Results, update.CountedOn);
        return new VansView(
            vans, update.LastDay, new ServedFiles(shop.Output).Months() is [var newest, ..] ? newest : null, update.Currency, update.StandIn,
            vans.Count == 0 && File.Exists(shop.Output.RunRecord) ? VanList.WhyNone(shop.Output.Results) : null, update.Words);
    }

    private static WaitingView Waiting(ShopFolder shop)
    {
        using var update = LastUpdate.Open(shop);
        IReadOnlyList<BookedCall> calls = update.NotVisited;
        return new WaitingView(WaitingSheet.All(shop.Output.Results), update.LastDay, calls.Count, calls.Count(c => c.Van is not null), update.StandIn);
    }

    // Without a choice: the newest month beside the one before.
    private static CompareView Compared(ShopFolder shop, string? first, string? second)
    {
        MonthFigures[] months = [.. MonthFigures.All(shop.Output.Results).OrderByDescending(m => m.Month, StringComparer.Ordinal)];
        return months.Length < 2
            ? new CompareView([.. months.Select(m => m.Month)], null, null)
            : new CompareView([.. months.Select(m => m.Month)], Array.Find(months, m => m.Month == first) ?? months[1], Array.Find(months, m => m.Month == second) ?? months[0]);
    }

    // The predictor of the open shop, read once and again when another shop is opened.
    private sealed class OpenAnswers
    {
        private readonly Lock _lock = new();
        private string? _folder;
        private CallDesk? _answers;

        public CallDesk? Of(ShopFolder? shop, TimeProvider clock)
        {
            lock (_lock)
            {
                if (shop is not null && shop.Folder != _folder)
                {
                    try
                    {
                        _answers = new CallDesk(new ReloadingShop(shop.Output, () => ServedShop.Read(shop.Output, shop.Files)), clock, BenchEndpoints.WhenOld);
                        _folder = shop.Folder;
                    }
                    catch (BadInputException)
                    {
                        // There is no run yet.
                        return null;
                    }
                }

                return shop is null ? null : _answers;
            }
        }
    }
}
