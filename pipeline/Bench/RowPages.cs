using System.Globalization;
using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using PartsSignal.Pipeline.Rejects;

namespace PartsSignal.Pipeline.Bench;

/// <summary>What became of the rows, and mending those that were refused.</summary>
internal static class RowPages
{
    public static void Map(WebApplication app)
    {
        app.MapGet("/rows", (HttpContext context, KnownShops shops) => shops.Open is { } shop ? BenchEndpoints.Page<RowsPage>(context, View(shop, context.RequestAborted)) : BenchEndpoints.NoShop());
        app.MapGet("/rows/{file}", (HttpContext context, KnownShops shops, string file, string? saved) =>
            shops.Open is not { } shop ? BenchEndpoints.NoShop()
            : Find(shop, file) is not { } found ? Results.Redirect("/rows")
            : BenchEndpoints.Page<MendPage>(context, found, notice: saved is null ? null : "Saved. Update the figures to load the mended rows."));
        app.MapPost("/rows/{file}", async (HttpContext context, KnownShops shops, string file) =>
        {
            if (shops.Open is not { } shop || Find(shop, file) is not { } found)
            {
                return Results.Redirect("/rows");
            }

            IFormCollection form = await context.Request.ReadFormAsync(context.RequestAborted).ConfigureAwait(false);
            RefusedRow[] mended = [.. found.Rows.Rows.Where(r => form[$"do{Number(r.Index)}"] == "mend")];
            RefusedRow[] left = [.. found.Rows.Rows.Where(r => form[$"do{Number(r.Index)}"] == "leave")];
            if (mended.Length > 0)
            {
                found.Rows.Mend(shop.Files, file, mended.Select(r => (r, (IReadOnlyList<string>)[.. r.Cells.Select((c, i) => form.TryGetValue($"cell{Number(r.Index)}.{Number(i)}", out var typed) ? typed.ToString() : c)])));
            }

            new SettledRows(shop.Folder).Add(mended.Concat(left).Select(r => r.Key));
            return BenchEndpoints.SeeOther($"/rows/{Uri.EscapeDataString(file)}?saved=1");
        });
    }

    private static RowsView View(ShopFolder shop, CancellationToken cancellation)
    {
        string record = shop.Output.RunRecord;
        JsonObject? run = File.Exists(record) ? JsonNode.Parse(File.ReadAllText(record))!.AsObject() : null;
        BookLine[]? books = run?["files"] is JsonArray files ? [.. files.OfType<JsonObject>().Select(Line).GroupBy(l => (l.File, l.Kind)).Select(g => g.Aggregate((a, b) => a.And(b)))] : null;
        return new RowsView(books, run?["rows"] is JsonObject rows ? Line(rows) : null, [.. RejectFiles(shop).Select(f => (f, Find(shop, f)!.Rows.Rows.Count)).Where(f => f.Count > 0)], books is null ? [] : UnreadFile.Of(shop, books.Select(b => b.File).ToHashSet(StringComparer.Ordinal), File.GetLastWriteTimeUtc(record), cancellation));
    }

    private static BookLine Line(JsonObject counts) => new(
        (string?)counts["file"] ?? "All files", (string?)counts["kind"] ?? "", Count(counts, "read"), Count(counts, "loaded"), Count(counts, "duplicate"), Count(counts, "replaced"), Count(counts, "rejected"), Count(counts, "not_data"));

    private static long Count(JsonObject counts, string key) => (long?)counts[key] ?? 0;

    private static IEnumerable<string> RejectFiles(ShopFolder shop) => !Directory.Exists(shop.Output.Rejects) ? [] :
        Directory.EnumerateFiles(shop.Output.Rejects, "*" + RejectFile.Ending).Select(f => Path.GetFileName(f)!).Order(StringComparer.Ordinal);

    // The rows of a reject file that nobody has settled yet; the name is only compared, never used to build a path.
    private static MendView? Find(ShopFolder shop, string file)
    {
        if (!RejectFiles(shop).Contains(file))
        {
            return null;
        }

        IReadOnlySet<string> settled = new SettledRows(shop.Folder).Keys;
        RefusedRows rows = RefusedRows.Read(Path.Combine(shop.Output.Rejects, file));
        return new MendView(file, rows with { Rows = [.. rows.Rows.Where(r => !r.IsNotData && !settled.Contains(r.Key))] });
    }

    private static string Number(int value) => value.ToString(CultureInfo.InvariantCulture);
}
