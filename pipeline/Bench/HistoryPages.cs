using System.Globalization;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using PartsSignal.Pipeline.Core;

namespace PartsSignal.Pipeline.Bench;

/// <summary>Earlier updates to go back to, and backups.</summary>
internal static class HistoryPages
{
    public static void Map(WebApplication app)
    {
        app.MapGet("/history", (HttpContext context, KnownShops shops, TimeProvider clock) => shops.Open is { } shop ? BenchEndpoints.Page<HistoryPage>(context, HistoryView.Of(shop, clock)) : BenchEndpoints.NoShop());
        app.MapPost("/history/back", async (HttpContext context, KnownShops shops, BenchWork work, TimeProvider clock) =>
        {
            IFormCollection form = await context.Request.ReadFormAsync(context.RequestAborted).ConfigureAwait(false);
            if (shops.Open is not { } shop || work.Now.Outcome == WorkOutcome.Running || !int.TryParse(form["number"], NumberStyles.None, CultureInfo.InvariantCulture, out int number))
            {
                return BenchEndpoints.SeeOther("/history");
            }

            var history = new ShopHistory(shop, clock);
            try
            {
                await history.GoBackAsync(number, context.RequestAborted).ConfigureAwait(false);
            }
            catch (BadInputException bad)
            {
                return BenchEndpoints.Page<HistoryPage>(context, HistoryView.Of(shop, clock), bad.Faults);
            }

            work.Start(shop, new UpdateReason { GoesBack = true });
            return BenchEndpoints.SeeOther("/run");
        });
        app.MapGet("/backup", (KnownShops shops, TimeProvider clock) =>
        {
            if (shops.Open is not { } shop)
            {
                return BenchEndpoints.NoShop();
            }

            // A zip needs to be whole before it is sent: a broken one must not look like a backup.
            FileStream zip = new(Path.GetTempFileName(), FileMode.Create, FileAccess.ReadWrite, FileShare.None, 1 << 16, FileOptions.DeleteOnClose);
            ShopBackup.Write(shop, zip);
            zip.Position = 0;
            return Results.File(zip, "application/zip", ShopBackup.FileName(shop, DateOnly.FromDateTime(clock.GetLocalNow().DateTime)));
        });
        app.MapPost("/restore", async (HttpContext context, KnownShops shops) =>
        {
            IFormCollection form = await context.Request.ReadFormAsync(context.RequestAborted).ConfigureAwait(false);
            try
            {
                using Stream zip = (form.Files.Count > 0 && form.Files[0].Length > 0 ? form.Files[0] : throw new BadInputException("Choose a backup file.")).OpenReadStream();
                ShopBackup.Restore(shops, zip);
                return BenchEndpoints.SeeOther("/files");
            }
            catch (BadInputException bad)
            {
                return BenchEndpoints.Page<ShopsPage>(context, new ShopsView(shops.All), bad.Faults);
            }
        });
    }
}
