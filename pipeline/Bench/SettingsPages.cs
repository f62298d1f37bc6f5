using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.FullRun;

namespace PartsSignal.Pipeline.Bench;

/// <summary>The shop's settings as a form.</summary>
internal static class SettingsPages
{
    private const int BlankVans = 2;

    public static void Map(WebApplication app)
    {
        app.MapGet("/settings", (HttpContext context, KnownShops shops, string? saved) => shops.Open is { } shop ? Show(context, shop, notice: saved is null ? null : "Saved. Update the figures to use the new settings.") : BenchEndpoints.NoShop());
        app.MapPost("/settings", async (HttpContext context, KnownShops shops) =>
        {
            if (shops.Open is not { } shop)
            {
                return BenchEndpoints.NoShop();
            }

            IFormCollection form = await context.Request.ReadFormAsync(context.RequestAborted).ConfigureAwait(false);
            try
            {
                SettingsForm.Save(shop.Files, form);
                return BenchEndpoints.SeeOther("/settings?saved=1");
            }
            catch (BadInputException bad)
            {
                return Show(context, shop, bad.Faults);
            }
        });
        app.MapPost("/settings/forget", async (HttpContext context, KnownShops shops, BenchWork work, TimeProvider clock) =>
        {
            if (shops.Open is not { } shop)
            {
                return BenchEndpoints.NoShop();
            }

            IFormCollection form = await context.Request.ReadFormAsync(context.RequestAborted).ConfigureAwait(false);
            try
            {
                if (work.Now.Outcome == WorkOutcome.Running)
                {
                    throw new BadInputException("The figures are being updated. Wait until that is done.");
                }

                // It cannot be undone, so it is asked once more, with what it is about.
                if (form["sure"] != "yes")
                {
                    Staging.FoundCustomer found = CustomerRemoval.Find(shop.Files, shop.Output, form["customer"], context.RequestAborted);
                    return BenchEndpoints.Page<ForgetPage>(context, new ForgetView(form["customer"].ToString().Trim(), found.Rows, found.Files));
                }

                Staging.FoundCustomer forgotten = CustomerRemoval.Mark(shop.Files, shop.Output, form["customer"], context.RequestAborted);
                new ShopHistory(shop, clock).Clear();
                if (!work.Start(shop, new UpdateReason { Forgets = forgotten }))
                {
                    throw new BadInputException("The customer is marked to be forgotten. Update the figures once more when the update that runs now is done.");
                }

                return BenchEndpoints.SeeOther("/run");
            }
            catch (BadInputException bad)
            {
                return Show(context, shop, bad.Faults);
            }
        });
    }

    private static IResult Show(HttpContext context, ShopFolder shop, IReadOnlyList<string>? faults = null, string? notice = null)
    {
        try
        {
            ShopSettings settings = ShopFile.Load(shop.Files);
            using var update = LastUpdate.Open(shop);

            // Counted vans that no setting names stand there already: their names must be those of the count.
            IEnumerable<ShopVan> counted = update.CountedOn.Keys.Except(settings.Vans.Select(v => v.Van).Concat(update.ListedVans), StringComparer.Ordinal).Select(v => new ShopVan(v, null, null));
            return BenchEndpoints.Page<SettingsPage>(context, new SettingsView(settings, [.. settings.Vans, .. counted, .. Enumerable.Repeat(new ShopVan("", null, null), BlankVans)], update.StandIn, update.Technicians), faults, notice);
        }
        catch (BadInputException bad)
        {
            return BenchEndpoints.Page<SettingsPage>(context, new SettingsView(new ShopSettings(), [], null, []), [.. faults ?? [], .. bad.Faults]);
        }
    }
}
