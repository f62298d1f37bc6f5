using System.Globalization;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Review;

namespace PartsSignal.Pipeline.Bench;

/// <summary>Words and numbers the program asks about.</summary>
internal static class WordPages
{
    /// <summary>Most questions shown at once.</summary>
    public const int MostShown = 40;

    /// <summary>Field of a tick: the name is right as it is. The number of the row follows.</summary>
    public const string RightField = "right";

    /// <summary>Field that is sent when all open names of a list are right.</summary>
    public const string AllRight = "all-right";

    private const string AnswerField = "answer";
    private const string WorkbookKind = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";

    public static void Map(WebApplication app)
    {
        app.MapGet("/words", (HttpContext context, KnownShops shops, string? list, string? saved) => shops.Open is { } shop
            ? Show(context, shop, list, notice: saved is null ? null : "Saved. Update the figures to use your answers.")
            : BenchEndpoints.NoShop());
        app.MapGet("/words/workbook", (KnownShops shops) =>
        {
            if (shops.Open is not { } shop)
            {
                return BenchEndpoints.NoShop();
            }

            var stream = new MemoryStream();
            ReviewWorkbook.Write(stream, Lists(shop));
            stream.Position = 0;
            return Results.File(stream, WorkbookKind, ReviewWorkbook.FileName);
        });
        app.MapPost("/words/workbook", async (HttpContext context, KnownShops shops) =>
        {
            if (shops.Open is not { } shop)
            {
                return BenchEndpoints.NoShop();
            }

            IFormCollection form = await context.Request.ReadFormAsync(context.RequestAborted).ConfigureAwait(false);
            return await ReadAsync(context, shop, form.Files).ConfigureAwait(false);
        });
        app.MapPost("/words/{list}", async (HttpContext context, KnownShops shops, string list) =>
        {
            if (shops.Open is not { } shop || Lists(shop).FirstOrDefault(l => l.File == list) is not { } found)
            {
                return Results.Redirect("/words");
            }

            IFormCollection form = await context.Request.ReadFormAsync(context.RequestAborted).ConfigureAwait(false);
            IReadOnlyList<string> unknown = found.Save(shop.Output.Review, shop.Files, Answers(found, form));
            return unknown.Count > 0 ? Show(context, shop, list, unknown) : BenchEndpoints.SeeOther($"/words?list={Uri.EscapeDataString(list)}&saved=1");
        });
    }

    /// <summary>Reads the answers of workbooks that a person chose, and shows what became of them.</summary>
    /// <param name="context">The request.</param>
    /// <param name="shop">The shop.</param>
    /// <param name="files">The workbooks.</param>
    /// <param name="saved">Files with data of the shop that came with them and are saved.</param>
    public static async Task<IResult> ReadAsync(HttpContext context, ShopFolder shop, IReadOnlyList<IFormFile> files, int saved = 0)
    {
        string? added = saved == 0 ? null : Counted.Of(saved, "other file") + " added.";
        try
        {
            if (files.Count == 0 || files.Any(f => f.Length == 0))
            {
                throw new BadInputException("Choose the workbook with your answers.");
            }

            var faults = new List<string>();
            int count = 0;
            foreach (IFormFile file in files)
            {
                await UploadedFiles.WithCopyAsync(file, (path, name) =>
                {
                    WorkbookAnswers answers = ReviewWorkbook.Read(path, name, Lists(shop));
                    count += answers.Count;
                    faults.AddRange(answers.Save(shop.Output.Review, shop.Files));
                }, context.RequestAborted).ConfigureAwait(false);
            }

            string read = count == 0 ? "The workbook has no answers yet. Fill in its yellow columns and save it." : $"{Counted.Of(count, "answer")} read. Update the figures to use them.";
            return Show(context, shop, null, faults, string.Join(' ', new[] { added, read }.OfType<string>()));
        }
        catch (BadInputException bad)
        {
            return Show(context, shop, null, bad.Faults, added);
        }
    }

    // What was typed counts before a tick, and a tick before "all are right".
    private static Dictionary<int, string> Answers(QuestionList list, IFormCollection form)
    {
        Dictionary<int, string> answers = form
            .Where(f => f.Key.StartsWith(AnswerField, StringComparison.Ordinal) && int.TryParse(f.Key.AsSpan(AnswerField.Length), NumberStyles.None, CultureInfo.InvariantCulture, out _))
            .ToDictionary(f => int.Parse(f.Key.AsSpan(AnswerField.Length), NumberStyles.None, CultureInfo.InvariantCulture), f => f.Value.ToString());
        bool all = form.ContainsKey(AllRight);
        foreach (ReviewQuestion question in list.Questions.Where(q => list.MayBeRight && string.IsNullOrWhiteSpace(answers.GetValueOrDefault(q.Index))))
        {
            if (form[RightField + question.Index.ToString(CultureInfo.InvariantCulture)] == "yes" || (all && question.Answer.Length == 0))
            {
                answers[question.Index] = question.Text;
            }
        }

        return answers;
    }

    private static IReadOnlyList<QuestionList> Lists(ShopFolder shop) => QuestionList.All(shop.Output.Review, shop.Files);

    private static IResult Show(HttpContext context, ShopFolder shop, string? list, IReadOnlyList<string>? faults = null, string? notice = null)
    {
        IReadOnlyList<QuestionList> lists = Lists(shop);
        return BenchEndpoints.Page<WordsPage>(context, new WordsView(lists, lists.FirstOrDefault(l => l.File == list)), faults, notice);
    }
}
