using System.ComponentModel;
using System.ComponentModel.DataAnnotations;
using System.Globalization;
using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.OpenApi;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.OpenApi;
using PartsSignal.Analysis.Prediction.Answers;
using PartsSignal.Pipeline.Learning;
using PartsSignal.Reports.Components;
using PartsSignal.Reports.Phone;

namespace PartsSignal.Pipeline.Serving;

/// <summary>The addresses of the server. Those below <c>/api</c> and <c>/health</c> are for programs and are in the API description.</summary>
/// <param name="live">The newest run.</param>
/// <param name="clock">Says what day it is.</param>
internal sealed class ShopEndpoints(ReloadingShop live, TimeProvider clock)
{
    private readonly CallDesk _desk = new(live, clock, "Ask the office to update the figures.");

    private const string Html = "text/html; charset=utf-8";
    private const string Json = "application/json; charset=utf-8";

    private static readonly string[] Read = [HttpMethods.Get, HttpMethods.Head];

    /// <summary>What <c>/health</c> answers.</summary>
    internal sealed record Health(string Status, DateOnly? DataUpTo, DateOnly? LearnedTo);

    /// <summary>Why a question was refused.</summary>
    internal sealed record Refusal(IReadOnlyList<string> Faults);

    /// <summary>Adds every address to the server.</summary>
    public void Map(WebApplication app)
    {
        var files = new ServedFiles(live.Now().Output);
        Page("/", FormPage);
        Page("/answer", AnswerPage);
        Page("/openapi.json", DescribeAsync);
        Page("/favicon.ico", () => Results.NoContent());
        Page("/lookup.html", files.PhonePage);
        Page("/reports", () => Results.Redirect("/reports/index.html"));
        Page("/reports/index.html", () => files.Report(null, "index.html"));
        Page("/reports/{month}/{file}", files.Report);
        app.MapMethods("/api/lookup", Read, Lookup)
            .WithSummary("Likely needs, parts and checks of one call")
            .Produces<Answer>()
            .Produces<Refusal>(StatusCodes.Status400BadRequest)
            .AddOpenApiOperationTransformer((operation, _, _) =>
            {
                Restrict(operation, "type", new OpenApiSchema { Type = JsonSchemaType.String, Enum = [.. CallQuestion.ApplianceTypes.Select(t => (JsonNode)t)] });
                Restrict(operation, "age", new OpenApiSchema { Type = JsonSchemaType.Number, Minimum = "0", Maximum = CallQuestion.OldestAge.ToString(CultureInfo.InvariantCulture) });
                return Task.CompletedTask;
            });
        app.MapMethods("/api/months", Read, () => Results.Json(files.Months()))
            .WithSummary("Months with a report, newest first, such as 2026-03")
            .Produces<IReadOnlyList<string>>();
        app.MapMethods("/health", Read, () => Results.Json(new Health("ok", live.Now().DataUpTo, live.Now().Answers.LearnedTo)))
            .WithSummary("Whether the server answers, and up to which day its data goes")
            .Produces<Health>();

        // The server leaves the body out of the answer to HEAD by itself.
        void Page(string path, Delegate answer) => app.MapMethods(path, Read, answer).ExcludeFromDescription();
    }

    /// <summary>Registers the API description, which is generated from the addresses above.</summary>
    public static void Describe(IServiceCollection services)
    {
        services.ConfigureHttpJsonOptions(options => AnswerJson.Apply(options.SerializerOptions));
        services.AddOpenApi(options =>
        {
            options.ShouldInclude = description => description.HttpMethod == HttpMethods.Get;
            options.AddDocumentTransformer((document, _, _) =>
            {
                document.Info = new OpenApiInfo
                {
                    Title = "PartsSignal",
                    Version = "1",
                    Description = "What an appliance call will probably need, and which months have a report. Answers come from the last run.",
                };
                document.Servers = [];
                return Task.CompletedTask;
            });
            options.AddOperationTransformer((operation, _, _) =>
            {
                operation.Responses ??= [];
                operation.Responses["401"] = new OpenApiResponse { Description = "A token is required" };
                operation.Responses["429"] = new OpenApiResponse { Description = "Too many requests; wait a minute" };
                return Task.CompletedTask;
            });

            // The two values that the endpoint adds to an answer.
            options.AddSchemaTransformer((schema, context, _) =>
            {
                if (context.JsonTypeInfo.Type == typeof(Answer))
                {
                    schema.Properties ??= new Dictionary<string, IOpenApiSchema>();
                    schema.Properties["currency"] = new OpenApiSchema { Type = JsonSchemaType.String };
                    schema.Properties["data_up_to"] = new OpenApiSchema { Type = JsonSchemaType.String | JsonSchemaType.Null, Format = "date" };
                }

                return Task.CompletedTask;
            });
        });
    }

    private IResult FormPage() => Show(_desk.Empty());

    private IResult AnswerPage(string? model, string? complaint, string? type, string? age, string? code) => Show(_desk.Ask(model, complaint, type, age, code));

    private static IResult Show(CallView view) =>
        Results.Content(PageRenderer.Render<CallPage>(view), Html, statusCode: view.Faults.Count == 0 ? StatusCodes.Status200OK : StatusCodes.Status400BadRequest);

    private IResult Lookup(
        [Description("Model number from the label, or a model family"), MaxLength(CallQuestion.LongestText)] string? model,
        [Description("What the customer said, or a complaint kind"), MaxLength(CallQuestion.LongestText)] string? complaint,
        [Description("Appliance type, if the model is unknown")] string? type,
        [Description("Age in years")] string? age,
        [Description("Error code on the display"), MaxLength(CallQuestion.LongestText)] string? code)
    {
        CallQuestion question = CallDesk.Question(model, complaint, type, age, code);
        string[] faults = [.. question.Faults(live.Now().Answers.ApplianceTypes).Select(f => f.Field is null ? f.Message : $"{f.Field}: {f.Message}")];
        if (faults.Length > 0)
        {
            return Results.Json(new Refusal(faults), statusCode: StatusCodes.Status400BadRequest);
        }

        JsonObject json = AnswerJson.Create(_desk.Answer(question), live.Now().Answers.Settings.Currency);
        json["data_up_to"] = live.Now().DataUpTo?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
        return Results.Content(json.ToJsonString(), Json);
    }

    private static async Task<IResult> DescribeAsync(HttpContext context)
    {
        IOpenApiDocumentProvider provider = context.RequestServices.GetRequiredKeyedService<IOpenApiDocumentProvider>("v1");
        OpenApiDocument document = await provider.GetOpenApiDocumentAsync(context.RequestAborted).ConfigureAwait(false);
        return Results.Content(await document.SerializeAsJsonAsync(OpenApiSpecVersion.OpenApi3_1, context.RequestAborted).ConfigureAwait(false), Json);
    }

    private static void Restrict(OpenApiOperation operation, string name, OpenApiSchema schema)
    {
        if (operation.Parameters?.OfType<OpenApiParameter>().FirstOrDefault(p => p.Name == name) is { } parameter)
        {
            parameter.Schema = schema;
        }
    }
}
