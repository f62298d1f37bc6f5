using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using PartsSignal.Analysis.Prediction;
using PartsSignal.Analysis.Prediction.Contest;
using PartsSignal.Analysis.Prediction.LogOdds;
using PartsSignal.Analysis.Prediction.ModelFiles;
using PartsSignal.Pipeline.Core;

namespace PartsSignal.Pipeline.Learning;

/// <summary>The model card: training data, limits, and accuracy on unseen months.</summary>
internal static class ModelCard
{
    private static readonly JsonSerializerOptions Format = new() { WriteIndented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    private static readonly string[] CannotKnow =
    [
        "Faults that were never written down, and what a wrong diagnosis hid: it learns what jobs were recorded to need, not what was truly broken.",
        "Jobs still open, declined, or closed without saying what was needed; they are left out, not counted as 'no part'.",
        "Models and families the shop has not met: they are answered from the type of appliance, and the answer says so.",
        "What a technician sees on site, and anything a customer did not mention.",
        "Calls that went to another shop.",
    ];

    private const string SlicesNote =
        "Slices named no_... and unreadable_... are calls of the test months asked again with that much held back. Where the type is not told, "
        + "odds are summed over the types the complaint comes with. A set is the likeliest needs until they reach a threshold tuned by complaint and type; "
        + "it holds at least one need, and never less than 60 % (short set) or 90 % (long set) of the call's own odds, so that easy complaints may be covered more often than 80 or 95 times in 100.";

    private const string WinsNote =
        "Where each contender had the lowest log loss in the months the choice was made on: all calls, and types and complaints with 50 calls or more. "
        + "An empty list: nowhere in this shop. A contender that ships on no shop measured is taken out of the contest.";

    /// <summary>Writes the card next to its model.</summary>
    public static void Write(OutputFolder output, LearningResult learned, IReadOnlyList<ClosedCall> calls, IReadOnlyList<ScoreRow> scores, IReadOnlyList<SliceRow> slices) =>
        File.WriteAllBytes(ModelStore.CardOf(output), JsonSerializer.SerializeToUtf8Bytes(Create(learned, calls, scores, slices), Format));

    /// <summary>The card as JSON.</summary>
    public static JsonObject Create(LearningResult learned, IReadOnlyList<ClosedCall> calls, IReadOnlyList<ScoreRow> scores, IReadOnlyList<SliceRow> slices) => new()
    {
        ["version"] = ShippedModel.Version,
        ["shipped"] = learned.Model.Contender,
        ["note"] = learned.Note,
        ["learned_from"] = LearnedFrom(learned, calls),
        ["cannot_know"] = new JsonArray([.. CannotKnow.Select(c => JsonValue.Create(c))]),
        ["known_at_booking"] = "complaint text and kind, error code, model, family, brand, appliance type, age and its basis, month, customer kind, earlier closed visits to the unit",
        ["months"] = learned.TimeSplit is { } t ? Months(t) : null,
        ["temperature"] = learned.Model.Temperature,
        ["contest"] = Rows(PredictionTables.Contest(learned)),
        ["wins_note"] = WinsNote,
        ["wins"] = new JsonObject(learned.Entries.Select(e => KeyValuePair.Create<string, JsonNode?>(e.Name, new JsonArray([.. e.Wins.Select(w => JsonValue.Create(w))])))),
        ["figures"] = Rows(scores),
        ["slices_note"] = SlicesNote,
        ["slices"] = Rows(slices),
        ["reliability"] = Rows(PredictionTables.ReliabilityTable(learned)),
        ["by_month"] = Rows(PredictionTables.Months(learned)),
        ["spreads"] = learned.Model.Predictor is LogOddsModel sums ? Spreads(sums) : null,
    };

    private static JsonObject LearnedFrom(LearningResult learned, IReadOnlyList<ClosedCall> calls) => new()
    {
        ["jobs"] = learned.Model.Jobs,
        ["first_call"] = Day(calls.Count == 0 ? null : calls[0].OpenedOn),
        ["last_closed"] = Day(learned.Model.LearnedTo),
        ["families"] = calls.Select(c => c.Call.ModelFamily).OfType<string>().Distinct().Count(),
        ["needs"] = learned.Model.Needs.Count,
        ["jobs_by_type"] = new JsonObject(calls.CountBy(c => c.Call.ApplianceType).OrderBy(c => c.Key, StringComparer.Ordinal)
            .Select(c => KeyValuePair.Create<string, JsonNode?>(c.Key, c.Value))),
    };

    private static JsonObject Months(TimeSplit t) => new()
    {
        ["calibrated_on"] = Text(t.Calibration),
        ["chosen_on"] = Text(t.Validation),
        ["tested_on"] = Text(t.Test),
    };

    private static JsonObject Spreads(LogOddsModel model) => new(Enum.GetValues<FeatureGroup>()
        .Select(g => KeyValuePair.Create<string, JsonNode?>(JsonNamingPolicy.SnakeCaseLower.ConvertName(g.ToString()), Math.Round(model.SpreadOf(g), 4))));

    private static JsonArray Rows<T>(IEnumerable<T> rows) =>
        [.. rows.Select(r => JsonSerializer.SerializeToNode(r, SnakeCase))];

    private static readonly JsonSerializerOptions SnakeCase = new() { PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower };

    private static string Text(DateRange span) => $"{Day(span.From)} to {Day(span.To.AddDays(-1))}";

    private static string? Day(DateOnly? day) => day?.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);
}
