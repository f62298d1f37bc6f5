using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Review;
using PartsSignal.Pipeline.Understanding;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Bench;

/// <summary>The shop's files: what each is taken for, and the questions about them.</summary>
internal static class FilePages
{
    private const string AnswerField = "answer:";
    private const int MostNamed = 20;

    public static void Map(WebApplication app)
    {
        app.MapGet("/files", (HttpContext context, KnownShops shops, string[]? added) => shops.Open is { } shop ? Show(context, shop, notice: Added(shop, added ?? [])) : BenchEndpoints.NoShop());
        app.MapPost("/files/add", async (HttpContext context, KnownShops shops) =>
        {
            if (shops.Open is not { } shop)
            {
                return BenchEndpoints.NoShop();
            }

            IFormCollection form = await context.Request.ReadFormAsync(context.RequestAborted).ConfigureAwait(false);
            // The answers of a workbook belong to the page of words, wherever and with whatever they are dropped.
            IFormFile[] answers = [.. form.Files.Where(f => UploadedFiles.NameOf(f.FileName) is { } name && ReviewWorkbook.IsNamedSo(name))];
            IFormFile[] data = [.. form.Files.Except(answers)];
            try
            {
                int saved = answers.Length > 0 && data.Length == 0 ? 0 : await UploadedFiles.SaveAsync(data, shop.Files, context.RequestAborted).ConfigureAwait(false);
                return answers.Length == 0 ? BenchEndpoints.SeeOther("/files?" + string.Join('&', data.Take(MostNamed + 1).Select(f => "added=" + Uri.EscapeDataString(UploadedFiles.NameOf(f.FileName)!)))) : await WordPages.ReadAsync(context, shop, answers, saved).ConfigureAwait(false);
            }
            catch (BadInputException bad)
            {
                return Show(context, shop, bad.Faults);
            }
        });
        app.MapPost("/files/remove", async (HttpContext context, KnownShops shops) =>
        {
            IFormCollection form = await context.Request.ReadFormAsync(context.RequestAborted).ConfigureAwait(false);
            if (shops.Open is { } shop && FileNames(shop).Contains(form["file"].ToString()))
            {
                // Kept out of the way, never deleted: the owner may want it back.
                string aside = shop.Removed;
                Directory.CreateDirectory(aside);
                File.Move(Path.Combine(shop.Files, form["file"].ToString()), Path.Combine(aside, form["file"].ToString()), overwrite: true);
            }

            return BenchEndpoints.SeeOther("/files");
        });
        app.MapPost("/files/answers", async (HttpContext context, KnownShops shops, BenchWork work) =>
        {
            if (shops.Open is not { } shop)
            {
                return BenchEndpoints.NoShop();
            }

            IFormCollection form = await context.Request.ReadFormAsync(context.RequestAborted).ConfigureAwait(false);
            try
            {
                Answer(shop, form.Where(f => f.Key.StartsWith(AnswerField, StringComparison.Ordinal) && f.Value.ToString().Length > 0).ToDictionary(f => f.Key[AnswerField.Length..], f => f.Value.ToString(), StringComparer.Ordinal), context.RequestAborted);
                if (form["then"] == "run")
                {
                    work.Start(shop);
                    return BenchEndpoints.SeeOther("/run");
                }

                return BenchEndpoints.SeeOther("/files#questions");
            }
            catch (BadInputException bad)
            {
                return Show(context, shop, bad.Faults);
            }
        });
    }

    /// <summary>Names of the shop's own files, not those the program puts beside them.</summary>
    public static IReadOnlyList<string> FileNames(ShopFolder shop) => !Directory.Exists(shop.Files) ? [] :
        [.. Directory.EnumerateFiles(shop.Files).Select(f => Path.GetFileName(f)!).Where(f => UploadedFiles.NameOf(f) is not null && !ReviewNames.All.Contains(f) && !ReviewWorkbook.IsNamedSo(f)).Order(StringComparer.OrdinalIgnoreCase)];

    // Only names of files that are there: the address could hold anything.
    private static string? Added(ShopFolder shop, string[] named)
    {
        string[] there = [.. FileNames(shop).Intersect(named, StringComparer.Ordinal)];
        return there.Length == 0 ? null
            : there.Length > MostNamed ? "The files were added."
            : $"{Counted.Of(there.Length, "file")} added: {string.Join(", ", there)}.";
    }

    private static IResult Show(HttpContext context, ShopFolder shop, IReadOnlyList<string>? faults = null, string? notice = null)
    {
        try
        {
            return BenchEndpoints.Page<FilesPage>(context, new FilesView(Inspect(shop, ShopFile.Load(shop.Files).Answers, context.RequestAborted), FileNames(shop)), faults, notice);
        }
        catch (BadInputException bad)
        {
            return BenchEndpoints.Page<FilesPage>(context, new FilesView(null, FileNames(shop)), [.. faults ?? [], .. bad.Faults], notice);
        }
    }

    private static ShopInspection? Inspect(ShopFolder shop, IReadOnlyDictionary<string, string> answers, CancellationToken cancellation)
    {
        ReadingLimits limits = ShopFile.Load(shop.Files).Limits;
        IReadOnlyList<InputFile> files = ShopTables.In(shop.Files, limits);
        return files.Count == 0 ? null : new Inspector(limits, WordSets.Load(shop.Files), answers).Inspect(files, cancellation);
    }

    private static void Answer(ShopFolder shop, Dictionary<string, string> given, CancellationToken cancellation)
    {
        IReadOnlyDictionary<string, string> before = ShopFile.Load(shop.Files).Answers;
        var all = new Dictionary<string, string>(before, StringComparer.Ordinal);
        foreach ((string key, string choice) in given)
        {
            all[key] = choice;
        }

        if (Inspect(shop, all, cancellation) is { } inspection)
        {
            ProposedMaps.Save(shop.Files, inspection, given, write: false, () => Inspect(shop, before, cancellation)!);
        }
    }
}
