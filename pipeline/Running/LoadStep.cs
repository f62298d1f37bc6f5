using System.Text.Json.Nodes;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Transform;

namespace PartsSignal.Pipeline.Running;

/// <summary>Loads the shop's files and publishes the store that later steps read.</summary>
/// <param name="progress">Receives progress while reading, or null for no progress.</param>
/// <param name="loaded">Called when everything is read, or null.</param>
internal sealed class LoadStep(IProgress<StageProgress>? progress = null, Action? loaded = null) : IRunStep
{
    /// <inheritdoc/>
    public string Name => "load";

    /// <inheritdoc/>
    public async Task<long> RunAsync(RunContext context, CancellationToken cancellation)
    {
        LoadReport report = await ShopLoad.RunAsync(context.Input, context.Output, context.Settings, context.Clock, progress, cancellation).ConfigureAwait(false);
        loaded?.Invoke();
        context.State.Load = report;
        Record(report, context.Record);
        return report.Total.Rows.Read;
    }

    /// <summary>Fills the sections <c>rows</c>, <c>files</c>, <c>phases</c>, <c>combining</c> (the transform's tables) <c>review</c>, <c>finished_without_closing_day</c>, <c>date_codes</c> (those learned) and <c>unknown_cells</c> of the run record.</summary>
    public static void Record(LoadReport report, JsonObject record)
    {
        record["rows"] = Counts(report.Total, []);
        record["files"] = new JsonArray([.. report.Files.Select(f => (JsonNode)Counts(f, new JsonObject { ["file"] = f.Rows.File, ["kind"] = f.Rows.Kind }))]);
        record["phases"] = new JsonArray([.. report.Phases.Select(p => (JsonNode)RunRecord.Line(p))]);
        record["combining"] = new JsonArray([.. report.Steps.Select(s =>
            (JsonNode)new JsonObject { ["table"] = s.Table, ["rows"] = s.Rows, ["seconds"] = Math.Round(s.Seconds, 3) })]);
        record["review"] = new JsonArray([.. report.Review.Select(r => (JsonNode)new JsonObject { ["file"] = r.File, ["open"] = r.Open, ["not_understood"] = r.NotUnderstood })]);
        record["data_faults"] = report.DataFaults;
        record["finished_without_closing_day"] = new JsonObject
        {
            ["by_status"] = report.Closing.ByStatus,
            ["by_outcome"] = report.Closing.ByOutcome,
            ["by_row"] = report.Closing.ByRow,
            ["not_told"] = report.Closing.NotTold,
        };
        record["date_codes"] = new JsonArray([.. report.DateCodes.Select(c => (JsonNode)new JsonObject
        {
            ["brand"] = c.Brand, ["serials"] = c.SerialForm, ["date_code"] = c.DateCode, ["rule"] = c.Rule, ["pattern"] = c.Pattern,
            ["in_use"] = c.InUse, ["basis"] = c.Basis, ["confirming"] = c.Confirming, ["contradicting"] = c.Contradicting, ["jobs_aged"] = c.JobsAged,
        })]);
        record["unknown_cells"] = new JsonArray([.. report.Staged.SelectMany(f => f.UnreadCells.Select(u => (JsonNode)new JsonObject
        {
            ["file"] = f.SourceFile, ["field"] = u.Field, ["reason"] = u.Code, ["cells"] = u.Cells, ["first_line"] = u.FirstLine,
        }))]);
    }

    private static JsonObject Counts((FileCounts Rows, long NotData) line, JsonObject into)
    {
        into["read"] = line.Rows.Read;
        into["loaded"] = line.Rows.Loaded;
        into["duplicate"] = line.Rows.Duplicate;
        into["replaced"] = line.Rows.Replaced;
        into["rejected"] = line.Rows.Rejected;
        into["not_data"] = line.NotData;
        return into;
    }
}
