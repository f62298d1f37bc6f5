using System.Text.Json.Nodes;
using PartsSignal.Analysis.Prediction;
using PartsSignal.Analysis.Prediction.Contest;

namespace PartsSignal.Pipeline.Learning;

/// <summary>The section <c>prediction</c> of the run record. Keys that need the true causes of a simulated shop are null.</summary>
internal static class PredictionRecord
{
    /// <summary>Figures of all test calls and of each common complaint kind, null if they cannot be computed.</summary>
    public static JsonObject Create(LearningResult learned, int seed)
    {
        JsonObject section = learned.Answers is { } answers ? Figures(answers.Judge()) : [];
        section["shipped"] = learned.Model.Contender;
        section["seed"] = seed;
        section["note"] = learned.Note;
        if (learned.Answers is { } all)
        {
            var byKind = new JsonObject(ReportedComplaintKinds.All.Select(kind => KeyValuePair.Create<string, JsonNode?>(
                kind, Figures(all.Where(f => f.ComplaintKind == kind).Judge()))));
            section[ReportedComplaintKinds.NoFill] = byKind[ReportedComplaintKinds.NoFill]!.DeepClone();
            section["by_complaint"] = byKind;
        }

        return section;
    }

    private static JsonObject Figures(TestFigures figures) => new()
    {
        ["jobs_tested"] = figures.Shipped.Jobs,
        ["log_loss"] = Round(figures.Shipped.LogLoss),
        ["log_loss_complaint_only"] = Round(figures.ComplaintOnly.LogLoss),
        ["log_loss_complaint_on_type"] = Round(figures.ComplaintOnType.LogLoss),
        ["gap_closed_from_complaint_on_type"] = null,
        ["log_loss_backoff"] = Round(figures.BackOff.LogLoss),
        ["log_loss_best_possible"] = null,
        ["gap_closed"] = null,
        ["top1"] = Round(figures.Shipped.Top1),
        ["top3"] = Round(figures.Shipped.Top3),
        ["top3_complaint_only"] = Round(figures.ComplaintOnly.Top3),
        ["calibration_error"] = Round(figures.Shipped.CalibrationError),
        ["coverage_95"] = Round(figures.Coverage95),
        ["coverage_80"] = Round(figures.Coverage80),
        ["brier"] = Round(figures.Shipped.Brier),
        ["never_seen"] = Round(figures.Shipped.NeverSeen),
        ["against_true_cause"] = null,
    };

    private static double? Round(double? value) => value is { } v ? Math.Round(v, 6) : null;
}
