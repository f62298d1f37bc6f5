using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using PartsSignal.Analysis.Prediction;
using PartsSignal.Pipeline.Core;

namespace PartsSignal.Pipeline.Running;

/// <summary>The record of a run, <c>run.json</c>: every documented key is present, null if the run could not compute it.</summary>
internal static class RunRecord
{
    private static readonly JsonSerializerOptions Format = new()
    {
        WriteIndented = true,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    private static readonly string[] PredictionKeys =
    [
        "jobs_tested", "log_loss", "log_loss_complaint_only", "log_loss_backoff", "log_loss_best_possible", "gap_closed",
        "top1", "top3", "top3_complaint_only", "calibration_error", "coverage_95",
    ];

    private static readonly string[] VanKeys =
    [
        "jobs_replayed", "completion_plan", "completion_most_used", "completion_hindsight", "gap_closed", "bound_gap", "budget",
    ];

    /// <summary>A record with every documented key set to null.</summary>
    public static JsonObject Empty()
    {
        JsonObject prediction = Nulls(PredictionKeys);
        prediction[ReportedComplaintKinds.NoFill] = Nulls(PredictionKeys);
        prediction["by_complaint"] = new JsonObject(ReportedComplaintKinds.All.Select(k => KeyValuePair.Create<string, JsonNode?>(k, Nulls(PredictionKeys))));
        return new JsonObject
        {
            ["rows"] = Nulls(["read", "loaded", "duplicate", "replaced", "rejected", "not_data"]),
            ["files"] = new JsonArray(),
            ["steps"] = new JsonArray(),
            ["peak_memory_mb"] = null,
            ["prediction"] = prediction,
            ["van"] = Nulls(VanKeys),
        };
    }

    /// <summary>An entry of <c>steps</c>, or of the load's <c>phases</c>, which count no rows.</summary>
    public static JsonObject Line(ResourceUsage taken, long? rows = null)
    {
        var line = new JsonObject { ["name"] = taken.Name, ["seconds"] = taken.Seconds };
        if (rows is not null)
        {
            line["rows"] = rows;
        }

        line["allocated_mb"] = taken.AllocatedMegabytes;
        line["peak_memory_mb"] = taken.PeakMegabytes;
        return line;
    }

    /// <summary>Writes the record.</summary>
    public static void Write(string path, JsonObject record) => File.WriteAllText(path, record.ToJsonString(Format) + "\n", new UTF8Encoding(false));

    /// <summary>Merges values recursively; keys without a new value stay.</summary>
    public static void Merge(JsonObject into, JsonObject values)
    {
        foreach ((string key, JsonNode? value) in values)
        {
            if (into[key] is JsonObject inner && value is JsonObject more)
            {
                Merge(inner, more);
            }
            else
            {
                into[key] = value?.DeepClone();
            }
        }
    }

    private static JsonObject Nulls(IEnumerable<string> keys) =>
        new(keys.Select(k => KeyValuePair.Create<string, JsonNode?>(k, null)));
}
