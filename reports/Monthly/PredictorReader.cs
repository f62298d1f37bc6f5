using System.Globalization;
using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Statistics;
using PartsSignal.Reports.Charts;
using PartsSignal.Reports.Components;

namespace PartsSignal.Reports.Monthly;

/// <summary>Reads the predictor's record.</summary>
internal static class PredictorReader
{
    public static PredictorFacts? Read(Database database, MonthlyOptions query)
    {
        if (!database.Has("prediction_scores"))
        {
            return null;
        }

        IReadOnlyList<ScoreRow> scores = database.Read("queries/report/prediction_scores.sql", r => new ScoreRow(
            Name(r.GetString(0)), Calls(r.GetString(1)), r.Int(2), r.Double(3), r.Double(4), r.Double(5), r.Double(6)));
        IReadOnlyList<CalibrationBin> bins = database.Read("queries/report/prediction_reliability.sql", r => new CalibrationBin(
            r.Double(1)!.Value, Estimate.From(r.Double(2)!.Value, r.Double(3), r.Double(4)), r.Int(0)));
        return new PredictorFacts(
            Answers(database), scores, [.. database.Read("queries/report/prediction_month.sql", Month, ("month", query.Month)).SelectMany(m => m)],
            bins, $"{Format.Count(bins.Sum(b => b.Answers))} closed jobs of the test months; first answers, in groups of equal size.", query.ModelCard);
    }

    private static IReadOnlyList<ScoreRow> Month(System.Data.Common.DbDataReader r) =>
    [
        new(Name("shipped"), "all", r.Int(0), r.Double(1), r.Double(4), r.Double(5), null),
        new(Name("complaint_only"), "all", r.Int(0), r.Double(2), null, null, null),
        new(Name("back_off"), "all", r.Int(0), r.Double(3), null, null, null),
    ];

    private static string Answers(Database database)
    {
        const string Honest = "It is shown beside what a shop would say from a tally sheet per complaint, on months that neither had seen.";
        if (!database.Has("prediction_contest"))
        {
            return Honest;
        }

        var contest = database.Read("queries/report/prediction_contest.sql", r => (What: r.GetString(1), Jobs: r.Int(2), LogLoss: r.Double(3), Ships: r.GetBoolean(4)));
        return contest.Where(c => c.Ships).Select(c => string.Create(CultureInfo.InvariantCulture,
            $"Answers come from: {c.What}. It won against {contest.Count - 1} others on {c.Jobs:#,0} later jobs (log loss {c.LogLoss:0.000}). {Honest}")).FirstOrDefault() ?? Honest;
    }

    private static string Name(string predictor) => predictor switch
    {
        "shipped" => "the predictor",
        "complaint_only" => "most common by complaint",
        "back_off" => "counting, model to type",
        _ => Format.Words(predictor),
    };

    private static string Calls(string slice) => slice == "all" ? "all" : Format.Words(slice[(slice.IndexOf(':', StringComparison.Ordinal) + 1)..]);
}
