using Microsoft.ML;
using Microsoft.ML.Data;

namespace PartsSignal.Analysis.Prediction.OddsPipeline;

/// <summary>
/// Judges odds against what calls really needed. The library's own evaluator leaves out calls whose need the model never saw,
/// and so flatters it; here such a call is a miss with the largest loss there is.
/// </summary>
public static class PartEvaluation
{
    /// <summary>Figures over all calls whose need is known.</summary>
    /// <param name="context">The library's context.</param>
    /// <param name="odds">Calls with the model's answers.</param>
    /// <param name="needColumn">Text column with what each call needed: a component, <c>none</c> or <c>other_part</c>. Where it is empty, the call is not judged.</param>
    public static Scores Evaluate(MLContext context, IDataView odds, string needColumn = "need")
    {
        IReadOnlyList<string> needs = PartOddsPipeline.Needs(odds);
        Dictionary<string, int> places = NeedList.Places(needs);
        var columns = SchemaDefinition.Create(typeof(JudgedRow));
        columns[nameof(JudgedRow.Need)].ColumnName = needColumn;
        return Scores.From(
        [
            .. context.Data.CreateEnumerable<JudgedRow>(odds, reuseRowObject: false, schemaDefinition: columns)
                .Where(r => !string.IsNullOrEmpty(r.Need))
                .Select(r => new Forecast("", default, "", "", [.. r.Score.Select(s => (double)s)], places.GetValueOrDefault(r.Need, -1)) { Needs = needs, Need = r.Need }),
        ]);
    }

    private sealed class JudgedRow
    {
        [ColumnName(CallOdds.ScoreColumn)]
        public float[] Score { get; set; } = [];

        public string Need { get; set; } = "";
    }
}
