using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using PartsSignal.Analysis.PartPrediction.Answers;
using PartsSignal.Pipeline.Words;
using PartsSignal.Reports.Phone;

namespace PartsSignal.Pipeline.Serving;

/// <summary>The addresses of the server.</summary>
internal static class ShopEndpoints
{
    private const int LongestText = 200;
    private const string Html = "text/html; charset=utf-8";
    private const string Json = "application/json; charset=utf-8";

    private static readonly string[] Read = [HttpMethods.Get, HttpMethods.Head];

    private static readonly string[] Types = ["washer", "dryer", "dishwasher", "refrigerator", "range", "microwave", "other"];

    private static readonly JsonSerializerOptions Format = new()
    {
        Encoder = JavaScriptEncoder.Default,
        PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.SnakeCaseLower) },
    };

    public static void Map(WebApplication app, ReloadingShop live)
    {
        var files = new ServedFiles(live.Now().Output);
        Map("/", () => Front(live.Now(), new Question(null, null, null, null), null));
        Map("/answer", (HttpRequest request) => Ask(request, live.Now(), Front));
        Map("/api/lookup", (HttpRequest request) => Ask(request, live.Now(), Told));
        Map("/api/months", () => Results.Content(JsonSerializer.Serialize(files.Months(), Format), Json));
        Map("/health", () => Results.Content(JsonSerializer.Serialize(new { status = "ok", data_up_to = live.Now().DataUpTo, learned_to = live.Now().LearnedTo }, Format), Json));
        Map("/openapi.json", () => Results.Content(WordTable.ReadDefault("openapi.json"), Json));
        Map("/favicon.ico", () => Results.NoContent());
        Map("/lookup.html", files.PhonePage);
        Map("/reports", () => Results.Redirect("/reports/index.html"));
        Map("/reports/index.html", () => files.Report(null, "index.html"));
        Map("/reports/{month}/{file}", files.Report);

        // The answer to HEAD is that to GET; the server leaves the body out by itself.
        void Map(string path, Delegate answer) => app.MapMethods(path, Read, answer);
    }

    private sealed record Question(string? Model, string? Complaint, string? Type, double? Age);

    private static IResult Front(ServedShop shop, Question asked, Answer? answer) => Results.Content(
        FrontPage.Render(shop.Settings.Shop, shop.DataUpTo, new AskedQuestion(asked.Model ?? "", asked.Complaint ?? "", asked.Type ?? "", asked.Age), answer), Html);

    private static IResult Told(ServedShop shop, Question asked, Answer answer)
    {
        JsonObject json = JsonSerializer.SerializeToNode(answer, Format)!.AsObject();
        json["data_up_to"] = shop.DataUpTo?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
        json["currency"] = shop.Settings.Currency;
        return Results.Content(json.ToJsonString(Format), Json);
    }

    private static IResult Ask(HttpRequest request, ServedShop shop, Func<ServedShop, Question, Answer, IResult> show)
    {
        var faults = new List<string>();
        var question = new Question(Text(request, "model", faults), Text(request, "complaint", faults), Text(request, "type", faults), Age(request, faults));
        if (question is { Model: null, Complaint: null, Type: null })
        {
            faults.Add("Say at least model, type or complaint.");
        }

        if (question.Type is { } type && !Types.Contains(type))
        {
            faults.Add($"type: must be one of {string.Join(", ", Types)}.");
        }

        return faults.Count > 0
            ? Results.Content(JsonSerializer.Serialize(new { faults }, Format), Json, statusCode: StatusCodes.Status400BadRequest)
            : show(shop, question, shop.Ask(question.Model, question.Complaint, question.Type, question.Age));
    }

    private static string? Text(HttpRequest request, string name, List<string> faults)
    {
        string text = request.Query[name].ToString();
        if (text.Length > LongestText)
        {
            faults.Add(string.Create(CultureInfo.InvariantCulture, $"{name}: longer than {LongestText} characters."));
        }

        return string.IsNullOrWhiteSpace(text) ? null : text;
    }

    private static double? Age(HttpRequest request, List<string> faults)
    {
        string text = request.Query["age"].ToString();
        if (text.Length == 0)
        {
            return null;
        }

        if (double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double age) && age is >= 0 and <= 80)
        {
            return age;
        }

        faults.Add("age: must be years from 0 to 80.");
        return null;
    }
}
