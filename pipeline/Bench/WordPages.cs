using System.Globalization;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;

namespace PartsSignal.Pipeline.Bench;

/// <summary>Words and numbers the program asks about.</summary>
internal static class WordPages
{
    private const string AnswerField = "answer";

    public static void Map(WebApplication app)
    {
        app.MapGet("/words", (HttpContext context, KnownShops shops, string? list, string? saved) =>
        {
            if (shops.Open is not { } shop)
            {
                return BenchEndpoints.NoShop();
            }

            IReadOnlyList<WordList> lists = WordList.All(shop.Output.Review, shop.Files);
            return BenchEndpoints.Page<WordsPage>(context, new WordsView(lists, lists.FirstOrDefault(l => l.File == list)), notice: saved is null ? null : "Saved. Update the figures to use your answers.");
        });
        app.MapPost("/words/{list}", async (HttpContext context, KnownShops shops, string list) =>
        {
            if (shops.Open is not { } shop || WordList.All(shop.Output.Review, shop.Files).FirstOrDefault(l => l.File == list) is not { } found)
            {
                return Results.Redirect("/words");
            }

            IFormCollection form = await context.Request.ReadFormAsync(context.RequestAborted).ConfigureAwait(false);
            found.Save(shop.Output.Review, shop.Files, form
                .Where(f => f.Key.StartsWith(AnswerField, StringComparison.Ordinal) && int.TryParse(f.Key.AsSpan(AnswerField.Length), NumberStyles.None, CultureInfo.InvariantCulture, out _))
                .ToDictionary(f => int.Parse(f.Key.AsSpan(AnswerField.Length), NumberStyles.None, CultureInfo.InvariantCulture), f => f.Value.ToString()));
            return BenchEndpoints.SeeOther($"/words?list={Uri.EscapeDataString(list)}&saved=1");
        });
    }
}
